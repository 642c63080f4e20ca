package weltwright.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import weltwright.error.UserFacingException;

/**
 * A file that is written whole or not at all: into a new file beside it, which takes its place when it is complete and
 * on the disk. Whatever goes wrong on the way, what was there before is still there, and nothing else is left behind
 * for long: see {@link UnfinishedFiles}.
 *
 * <p>What is replaced must be a file of the same kind that may be written to. The new one gets its permissions and, as
 * far as the system lets this user do that, its owner and group. Where the name is a symbolic link, the file that it
 * leads to is replaced and the link stays. Another name of the same file (a hard link) keeps the version before.
 */
public final class AtomicFile {
    private static final Set<PosixFilePermission> WRITE = EnumSet.of(
            PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    private final Path named;
    private final FileKind kind;
    private final boolean withBackup;
    private final Optional<FileVersion> expected;

    private AtomicFile(Path named, FileKind kind, boolean withBackup, Optional<FileVersion> expected) {
        this.named = Objects.requireNonNull(named);
        this.kind = Objects.requireNonNull(kind);
        this.withBackup = withBackup;
        this.expected = expected;
    }

    /** What is to be in a file. */
    @FunctionalInterface
    public interface Content {
        /** Writes all of it. */
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * A file to write; nothing is done yet.
     *
     * @param kind what it is to hold, and what may be replaced
     */
    public static AtomicFile of(Path file, FileKind kind) {
        return new AtomicFile(file, kind, false, Optional.empty());
    }

    /** The same; but the version before, if it differs, is kept beside it as {@link Backup#of}. */
    public AtomicFile withBackup() {
        return new AtomicFile(named, kind, true, expected);
    }

    /** The same; but it is written only where the file still holds what it held then, or is gone. */
    public AtomicFile expecting(FileVersion version) {
        return new AtomicFile(named, kind, withBackup, Optional.of(version));
    }

    /**
     * Throws the {@link UserFacingException} that writing would end with, as far as that can be known now: a missing or
     * protected folder; a file that is protected, of another kind, or none at all but a folder, a device or a pipe.
     */
    public void check() {
        target();
    }

    /**
     * Writes the file.
     *
     * @return what it holds now
     * @throws FileChangedException where it no longer holds what was expected
     * @throws UserFacingException where it cannot be written or must not be replaced: as {@link #check} says, or the
     *     disk is full
     */
    public FileVersion write(Content content) {
        Path target = target();
        UnfinishedFiles.removeFrom(folder(target));
        try (TemporaryFile temporary = TemporaryFile.beside(target)) {
            FileVersion written = temporary.fill(content);
            AccessRights.copy(target, temporary.path());
            if (!withBackup && expected.isEmpty()) {
                temporary.moveTo(target);
            } else {
                replace(target, temporary, written);
            }
            flush(folder(target));
            return new FileVersion(named, written.sha256());
        } catch (IOException e) {
            throw new UserFacingException(
                    "The file " + named + " could not be written.",
                    "Check that the folder may be written to and has room, that no other program has the file open, or "
                            + "choose another folder.",
                    e);
        }
    }

    private void replace(Path target, TemporaryFile temporary, FileVersion written) throws IOException {
        SaveLock lock = SaveLock.take();
        try {
            FileVersion before = FileVersion.of(target);
            if (before.sha256().isPresent()
                    && expected.isPresent()
                    && !expected.get().sameContent(before)) {
                throw new FileChangedException(named);
            }
            if (before.sameContent(written)) {
                return; // or the backup would be the same version, too, and the one before it lost
            }
            if (withBackup && before.sha256().isPresent()) {
                Backup.keep(target, kind);
            }
            temporary.moveTo(target);
        } finally {
            lock.close();
        }
    }

    /** The file itself, at the end of all links, checked to be one that may be written or is not there yet. */
    private Path target() {
        Path folder = named.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new UserFacingException(
                    "There is no folder " + folder + ".", "Make it first, or choose another folder.");
        }
        try {
            Path target = atEndOfLinks(named.toAbsolutePath());
            if (Files.exists(target)) {
                checkReplaceable(target);
            }
            if (!Files.isWritable(folder(target))) {
                throw new UserFacingException(
                        "The folder " + folder(target) + " is write-protected.",
                        "Choose another folder, or ask for the right to write there.");
            }
            return target;
        } catch (IOException e) {
            throw new UserFacingException(
                    "What is at " + named + " cannot be looked at.",
                    "Check that you may open it, or choose another name.",
                    e);
        }
    }

    private static Path folder(Path file) {
        return Objects.requireNonNull(file.getParent(), () -> file + " is in no folder");
    }

    private static Path atEndOfLinks(Path file) throws IOException {
        if (Files.exists(file)) {
            return file.toRealPath();
        }
        Path at = file;
        for (int links = 0; Files.isSymbolicLink(at); links++) {
            if (links == 40) { // as many as Linux follows (path_resolution(7))
                throw new FileSystemException(file.toString(), null, "a link that leads back to itself");
            }
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        return folder(at).toRealPath().resolve(at.getFileName());
    }

    private void checkReplaceable(Path target) throws IOException {
        BasicFileAttributes is = Files.readAttributes(target, BasicFileAttributes.class);
        if (is.isDirectory()) {
            throw new UserFacingException(named + " is a folder.", "Choose another name for the file.");
        }
        if (!is.isRegularFile()) {
            throw new UserFacingException(
                    named + " is a device or a pipe, not a file.", "Choose another name for the file.");
        }
        if (!Files.isWritable(target) || nobodyMayWrite(target)) {
            throw new UserFacingException(
                    named + " is write-protected.", "Choose another name, or take the protection from the file first.");
        }
        if (!kind.mayReplace(target)) {
            throw new UserFacingException(
                    named + " is there already and is not " + kind.words() + ".",
                    "Choose another name: a file of another kind is never written over.");
        }
    }

    /** Also true for the superuser, whom no permission stops. */
    private static boolean nobodyMayWrite(Path file) throws IOException {
        PosixFileAttributeView posix = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        return posix != null && posix.readAttributes().permissions().stream().noneMatch(WRITE::contains);
    }

    /** Has the folder's new entry on the disk; some systems, Windows for one, cannot be asked for it. */
    private static void flush(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // Then it gets there a little later.
        }
    }
}
