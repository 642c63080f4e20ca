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
import weltwright.message.Messages;

/**
 * Writes a file atomically: into a temporary file in the same folder, which is flushed to the disk and then moved to
 * the target. If writing fails, the previous content stays. {@link UnfinishedFiles} removes temporary files that a
 * killed process left behind.
 *
 * <p>A file is replaced only if it is of the same {@link FileKind} and writable. The new file gets its permissions and,
 * if the system permits it, its owner and group. If the target is a symbolic link, the file that it points to is
 * replaced. Other hard links of the file keep the previous content.
 */
public final class AtomicFile {
    private static final Messages TEXTS = Messages.of(AtomicFile.class);

    private static final Set<PosixFilePermission> WRITE = EnumSet.of(
            PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    private final Path named;
    private final FileKind kind;
    private final boolean withFolder;
    private final boolean withBackup;
    private final Optional<FileVersion> expected;

    private AtomicFile(
            Path named, FileKind kind, boolean withFolder, boolean withBackup, Optional<FileVersion> expected) {
        this.named = Objects.requireNonNull(named);
        this.kind = Objects.requireNonNull(kind);
        this.withFolder = withFolder;
        this.withBackup = withBackup;
        this.expected = expected;
    }

    /** Writes the content of a file. */
    @FunctionalInterface
    public interface Content {
        /** Writes the whole content; need not flush or close the stream. */
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Describes a file to write; does not access it.
     *
     * @param kind of the new content, and of a file that may be replaced
     */
    public static AtomicFile of(Path file, FileKind kind) {
        return new AtomicFile(file, kind, false, false, Optional.empty());
    }

    /** Makes the folder, where it is missing, when the file is written. */
    public AtomicFile withFolder() {
        return new AtomicFile(named, kind, true, withBackup, expected);
    }

    /** Keeps the previous content, if it differs, as {@link Backup#of} when the file is written. */
    public AtomicFile withBackup() {
        return new AtomicFile(named, kind, withFolder, true, expected);
    }

    /** Writes the file only if its content is still that of a version, or if it does not exist any more. */
    public AtomicFile expecting(FileVersion version) {
        return new AtomicFile(named, kind, withFolder, withBackup, Optional.of(version));
    }

    /**
     * Checks whether the file can be written, without writing it.
     *
     * @throws UserFacingException if the folder is missing or write-protected, or what is at the path is
     *     write-protected, of another kind, or a folder, a device or a pipe
     */
    public void check() {
        target();
    }

    /**
     * Writes the file.
     *
     * @return the version written
     * @throws FileChangedException if the content is no longer the expected one
     * @throws UserFacingException for the reasons of {@link #check}, or if writing fails
     */
    public FileVersion write(Content content) {
        if (withFolder) {
            makeFolder(folder(named.toAbsolutePath()));
        }
        Path target = target();
        UnfinishedFiles.removeFrom(folder(target));
        try (TemporaryFile temporary = TemporaryFile.inFolderOf(target)) {
            FileVersion written = temporary.write(content);
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
                    TEXTS.text("atomic-file.the-file-could-not-be", named),
                    TEXTS.text("atomic-file.check-that-the-folder-may"),
                    e);
        }
    }

    private static void makeFolder(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.the-folder-cannot-be-made", folder),
                    TEXTS.text("atomic-file.check-that-you-may-write"),
                    e);
        }
    }

    private void replace(Path target, TemporaryFile temporary, FileVersion written) throws IOException {
        SaveLock lock = SaveLock.acquire();
        try {
            FileVersion before = FileVersion.of(target);
            if (before.sha256().isPresent()
                    && expected.isPresent()
                    && !expected.get().sameContent(before)) {
                throw new FileChangedException(named);
            }
            if (before.sameContent(written)) {
                return; // a backup of the same content would replace the previous one
            }
            if (withBackup && before.sha256().isPresent()) {
                Backup.make(target, kind);
            }
            temporary.moveTo(target);
        } finally {
            lock.close();
        }
    }

    /** The path with links resolved, checked as {@link #check} describes. */
    private Path target() {
        Path folder = named.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.there-is-no-folder", String.valueOf(folder)),
                    TEXTS.text("atomic-file.make-it-first-or-choose"));
        }
        try {
            Path target = resolveLinks(named.toAbsolutePath());
            if (Files.exists(target)) {
                checkReplaceable(target);
            }
            if (!Files.isWritable(folder(target))) {
                throw new UserFacingException(
                        TEXTS.text("atomic-file.the-folder-is-write-protected", folder(target)),
                        TEXTS.text("atomic-file.choose-another-folder-or-ask"));
            }
            return target;
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.what-is-at-cannot-be", named),
                    TEXTS.text("atomic-file.check-that-you-may-open"),
                    e);
        }
    }

    private static Path folder(Path file) {
        return Objects.requireNonNull(file.getParent(), () -> file + " is in no folder");
    }

    private static Path resolveLinks(Path file) throws IOException {
        if (Files.exists(file)) {
            return file.toRealPath();
        }
        Path at = file;
        for (int links = 0; Files.isSymbolicLink(at); links++) {
            if (links == 40) { // as many as Linux follows (path_resolution(7))
                throw new FileSystemException(file.toString(), null, "a cycle of symbolic links");
            }
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        return folder(at).toRealPath().resolve(at.getFileName());
    }

    private void checkReplaceable(Path target) throws IOException {
        BasicFileAttributes is = Files.readAttributes(target, BasicFileAttributes.class);
        if (is.isDirectory()) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.is-a-folder", named),
                    TEXTS.text("atomic-file.choose-another-name-for-the"));
        }
        if (!is.isRegularFile()) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.is-a-device-or-a", named),
                    TEXTS.text("atomic-file.choose-another-name-for-the"));
        }
        if (!Files.isWritable(target) || nobodyMayWrite(target)) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.is-write-protected", named),
                    TEXTS.text("atomic-file.choose-another-name-or-take"));
        }
        if (!kind.mayReplace(target)) {
            throw new UserFacingException(
                    TEXTS.text("atomic-file.is-there-already-and-is", named, kind.name()),
                    TEXTS.text("atomic-file.choose-another-name-a-file"));
        }
    }

    /** Unlike {@link Files#isWritable}, regards the permissions of the file for the superuser, too. */
    private static boolean nobodyMayWrite(Path file) throws IOException {
        PosixFileAttributeView posix = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        return posix != null && posix.readAttributes().permissions().stream().noneMatch(WRITE::contains);
    }

    /** Flushes the folder's entries to the disk where the system supports it; Windows does not. */
    private static void flush(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // The system writes it later.
        }
    }
}
