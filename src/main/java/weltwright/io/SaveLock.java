package weltwright.io;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * A lock between all threads and processes of the user, held while a file is compared with its expected version and
 * then replaced. Of two processes that save one file at once, the second thus detects the first one's change. The
 * content is written before the lock is acquired, so that it is held briefly.
 */
final class SaveLock implements AutoCloseable {
    private static final Path FILE = UserDirectory.STATE.path().resolve("save.lock");
    private static final ReentrantLock IN_PROCESS = new ReentrantLock();

    /** Chosen by eye: far longer than the lock is ever held. */
    private static final int TIMEOUT_MS = 10_000;

    private static final int POLL_MS = 5;

    private final @Nullable FileChannel channel;

    private SaveLock(@Nullable FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Acquires the lock. If another process holds it for more than ten seconds, or the lock file cannot be written,
     * only the threads of this process are excluded; each file is still replaced atomically.
     */
    static SaveLock acquire() {
        IN_PROCESS.lock();
        FileChannel channel = null;
        try {
            Files.createDirectories(FILE.getParent());
            channel = FileChannel.open(FILE, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock();
            for (int waitedMs = 0; lock == null && waitedMs < TIMEOUT_MS; waitedMs += POLL_MS) {
                Thread.sleep(POLL_MS);
                lock = channel.tryLock();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            // Continues without the lock between processes.
        }
        return new SaveLock(channel);
    }

    @Override
    public void close() {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // The system releases it when the process ends.
        } finally {
            IN_PROCESS.unlock();
        }
    }
}
