package weltwright.io;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;
import weltwright.error.DefectLog;

/**
 * Held by one of the user's processes, and in it by one thread, while it looks whether a file is still what it was and
 * then replaces it: so of two that save one file at once, the second sees what the first did. Files are written before
 * it is taken, so that it is held for a moment only.
 */
final class SaveLock implements AutoCloseable {
    private static final Path FILE = DefectLog.usual().file().resolveSibling("save.lock");
    private static final ReentrantLock IN_PROCESS = new ReentrantLock();
    private static final int PATIENCE_MS = 10_000;
    private static final int PAUSE_MS = 5;

    private final @Nullable FileChannel channel;

    private SaveLock(@Nullable FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Waits for it. Where another process keeps it for ten seconds, or the user's own directory cannot be written to,
     * it is done without: each file is still replaced whole.
     */
    static SaveLock take() {
        IN_PROCESS.lock();
        FileChannel channel = null;
        try {
            Files.createDirectories(FILE.getParent());
            channel = FileChannel.open(FILE, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock();
            for (int waitedMs = 0; lock == null && waitedMs < PATIENCE_MS; waitedMs += PAUSE_MS) {
                Thread.sleep(PAUSE_MS);
                lock = channel.tryLock();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            // Without it.
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
            // Then it goes with the process.
        } finally {
            IN_PROCESS.unlock();
        }
    }
}
