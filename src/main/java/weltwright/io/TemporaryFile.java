package weltwright.io;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;

/**
 * A file on its way to take another's place. While it is being written its process holds a lock on it, which the system
 * takes away when the process ends, however it ends: by that {@link UnfinishedFiles} tells what was left behind from
 * what is at work. When the program is told to end, it takes its own away itself.
 */
final class TemporaryFile implements AutoCloseable {
    /** Locked is a byte behind the end of any file, since on Windows nobody else could read a locked one. */
    static final long LOCKED_BYTE = 1L << 40;

    /** Short, so that it fits where the longest name does. */
    static final String GLOB = ".weltwright-*.tmp";

    private static final Pattern NAME = Pattern.compile("\\.weltwright-[0-9a-f]{16}\\.tmp");
    private static final int ATTEMPTS = 100;
    private static final SecureRandom RANDOM = new SecureRandom();

    /** Those of this process; guarded by itself, as are the making, moving and deleting of them. */
    private static final Set<Path> AT_WORK = new HashSet<>();

    private static boolean ending;

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(TemporaryFile::deleteAll));
    }

    private final Path path;
    private final FileChannel channel;

    private TemporaryFile(Path path, FileChannel channel) {
        this.path = path;
        this.channel = channel;
    }

    /**
     * A new, empty one in the folder of the file whose place it is to take. Where that is there already, nobody but
     * this user may read the new one until it is given the same rights.
     */
    static TemporaryFile beside(Path target) throws IOException {
        boolean posix = target.getFileSystem().supportedFileAttributeViews().contains("posix");
        FileAttribute<?>[] rights = posix && Files.exists(target)
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            Path path = target.resolveSibling(String.format(Locale.ROOT, ".weltwright-%016x.tmp", RANDOM.nextLong()));
            FileChannel channel = open(path, rights);
            if (isLocked(channel) && Files.exists(path)) {
                return new TemporaryFile(path, channel);
            }
            // Between its making and its locking somebody took it for one that was left behind.
            new TemporaryFile(path, channel).close();
        }
        throw new IOException("no temporary file could be made beside " + target);
    }

    private static FileChannel open(Path path, FileAttribute<?>... rights) throws IOException {
        synchronized (AT_WORK) {
            checkNotEnding();
            AT_WORK.add(path);
            UnfinishedFiles.note(path);
            try {
                return FileChannel.open(path, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), rights);
            } catch (IOException e) {
                forget(path);
                throw e;
            }
        }
    }

    /** Where the file system knows no locks, the file is as good as locked: nobody else can lock it either. */
    private static boolean isLocked(FileChannel channel) {
        try {
            return channel.tryLock(LOCKED_BYTE, 1, false) != null;
        } catch (IOException e) {
            return true;
        }
    }

    /** Whether a file has the name of one of these. */
    static boolean isNamedLikeOne(Path file) {
        return NAME.matcher(String.valueOf(file.getFileName())).matches();
    }

    static boolean isAtWork(Path file) {
        synchronized (AT_WORK) {
            return AT_WORK.stream().anyMatch(own -> own.getFileName().equals(file.getFileName()));
        }
    }

    Path path() {
        return path;
    }

    /** Writes all of it, and has it on the disk before returning: a power cut must not cost both files. */
    FileVersion fill(AtomicFile.Content content) throws IOException {
        MessageDigest digest = FileVersion.newDigest();
        // Not closed, for that would close the channel, and with it the lock would go.
        OutputStream out = new BufferedOutputStream(new DigestOutputStream(Channels.newOutputStream(channel), digest));
        content.writeTo(out);
        out.flush();
        channel.force(true);
        return FileVersion.of(path, digest);
    }

    /** Puts it in the place of the other file, if there is one, in one step: there is always the one or the other. */
    void moveTo(Path target) throws IOException {
        synchronized (AT_WORK) {
            checkNotEnding();
            Files.move(path, target, StandardCopyOption.ATOMIC_MOVE);
            forget(path);
        }
    }

    /** Deletes it, unless it was moved. */
    @Override
    public void close() throws IOException {
        channel.close();
        synchronized (AT_WORK) {
            if (AT_WORK.contains(path)) {
                Files.deleteIfExists(path);
                forget(path);
            }
        }
    }

    private static void forget(Path path) {
        AT_WORK.remove(path);
        UnfinishedFiles.forget(path);
    }

    private static void checkNotEnding() {
        if (ending) {
            throw new UserFacingException("The program was ended before the file was written.", "Start it again.");
        }
    }

    private static void deleteAll() {
        synchronized (AT_WORK) {
            ending = true;
            for (Path path : Set.copyOf(AT_WORK)) {
                try {
                    Files.deleteIfExists(path);
                    forget(path);
                } catch (IOException e) {
                    // The next start does it.
                }
            }
        }
    }
}
