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
import weltwright.message.Messages;

/**
 * A temporary file that is to replace another file. Its process locks it while writing; the system releases the lock
 * when the process ends, so {@link UnfinishedFiles} can tell an abandoned file from one that is being written. A
 * shutdown hook deletes the files of a process that is terminated by a signal.
 */
final class TemporaryFile implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(TemporaryFile.class);

    /** Position of the locked byte, beyond the end of any file: on Windows a locked range cannot be read by others. */
    static final long LOCKED_BYTE = 1L << 40;

    static final String GLOB = ".weltwright-*.tmp";

    private static final Pattern NAME = Pattern.compile("\\.weltwright-[0-9a-f]{16}\\.tmp");
    private static final int ATTEMPTS = 100;
    private static final SecureRandom RANDOM = new SecureRandom();

    /** The temporary files of this process. Its monitor guards the set and the making, moving and deleting of files. */
    private static final Set<Path> OPEN = new HashSet<>();

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
     * Makes an empty temporary file in the folder of the file that it is to replace. If that exists, only this user may
     * read the new one until it is given the same access rights.
     */
    static TemporaryFile inFolderOf(Path target) throws IOException {
        boolean posix = target.getFileSystem().supportedFileAttributeViews().contains("posix");
        FileAttribute<?>[] rights = posix && Files.exists(target)
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            Path path = target.resolveSibling(String.format(Locale.ROOT, ".weltwright-%016x.tmp", RANDOM.nextLong()));
            FileChannel channel = open(path, rights);
            if (lock(channel) && Files.exists(path)) {
                return new TemporaryFile(path, channel);
            }
            // Another process took it for an abandoned one before it was locked.
            new TemporaryFile(path, channel).close();
        }
        throw new IOException("no temporary file could be made beside " + target);
    }

    private static FileChannel open(Path path, FileAttribute<?>... rights) throws IOException {
        synchronized (OPEN) {
            checkNotEnding();
            OPEN.add(path);
            UnfinishedFiles.register(path);
            try {
                return FileChannel.open(path, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), rights);
            } catch (IOException e) {
                forget(path);
                throw e;
            }
        }
    }

    /** Locks a file. Also true on a file system without locks, where no other process can lock it either. */
    private static boolean lock(FileChannel channel) {
        try {
            return channel.tryLock(LOCKED_BYTE, 1, false) != null;
        } catch (IOException e) {
            return true;
        }
    }

    /** Whether a file has the name of a temporary file. */
    static boolean hasTemporaryName(Path file) {
        return NAME.matcher(String.valueOf(file.getFileName())).matches();
    }

    /** Whether a file is a temporary file of this process. */
    static boolean isOpen(Path file) {
        synchronized (OPEN) {
            return OPEN.stream().anyMatch(own -> own.getFileName().equals(file.getFileName()));
        }
    }

    Path path() {
        return path;
    }

    /** Writes the content and flushes it to the disk, so that a power failure after {@link #moveTo} loses nothing. */
    FileVersion write(AtomicFile.Content content) throws IOException {
        MessageDigest digest = FileVersion.newDigest();
        // Closing the stream would close the channel and release the lock.
        OutputStream out = new BufferedOutputStream(new DigestOutputStream(Channels.newOutputStream(channel), digest));
        content.writeTo(out);
        out.flush();
        channel.force(true);
        return FileVersion.of(path, digest);
    }

    /** Moves the file to the target, replacing it atomically. */
    void moveTo(Path target) throws IOException {
        synchronized (OPEN) {
            checkNotEnding();
            Files.move(path, target, StandardCopyOption.ATOMIC_MOVE);
            forget(path);
        }
    }

    /** Closes the file and deletes it unless it was moved. */
    @Override
    public void close() throws IOException {
        channel.close();
        synchronized (OPEN) {
            if (OPEN.contains(path)) {
                Files.deleteIfExists(path);
                forget(path);
            }
        }
    }

    private static void forget(Path path) {
        OPEN.remove(path);
        UnfinishedFiles.unregister(path);
    }

    private static void checkNotEnding() {
        if (ending) {
            throw new UserFacingException(
                    TEXTS.text("temporary-file.the-program-was-ended-before"),
                    TEXTS.text("temporary-file.start-it-again"));
        }
    }

    private static void deleteAll() {
        synchronized (OPEN) {
            ending = true;
            for (Path path : Set.copyOf(OPEN)) {
                try {
                    Files.deleteIfExists(path);
                    forget(path);
                } catch (IOException e) {
                    // UnfinishedFiles deletes it at the next start.
                }
            }
        }
    }
}
