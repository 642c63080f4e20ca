package weltwright.io;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Set;
import weltwright.error.DefectLog;

/**
 * Temporary files that a process left behind because it was killed, or the power went. They are removed at the next
 * save into their folder, and at the next start of the program from wherever they are: each is noted in the user's own
 * directory while it is being written. One that another process is writing is locked, and stays. Never fails: what
 * cannot be removed is tried the next time.
 */
public final class UnfinishedFiles {
    private static final Path NOTES = DefectLog.usual().file().resolveSibling("unfinished");

    private UnfinishedFiles() {}

    /** Removes those in one folder. */
    public static void removeFrom(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, TemporaryFile.GLOB)) {
            files.forEach(UnfinishedFiles::removeIfAbandoned);
        } catch (IOException | RuntimeException e) {
            // The folder cannot be looked through; then nothing can be saved into it either.
        }
    }

    /** Removes all that this user's earlier processes left behind. */
    public static void removeAll() {
        try (DirectoryStream<Path> notes = Files.newDirectoryStream(NOTES, TemporaryFile.GLOB)) {
            notes.forEach(UnfinishedFiles::removeNoted);
        } catch (IOException | RuntimeException e) {
            // None was ever noted, or the directory is not to be read.
        }
    }

    /** Notes, before it is made, that a temporary file is about to be made. */
    static void note(Path temporary) {
        ProcessHandle self = ProcessHandle.current();
        try {
            Files.createDirectories(NOTES);
            Files.write(noteOf(temporary), List.of(temporary.toString(), process(self)));
        } catch (IOException e) {
            // Then the next save into its folder finds it.
        }
    }

    static void forget(Path temporary) {
        try {
            Files.deleteIfExists(noteOf(temporary));
        } catch (IOException e) {
            // A note of a file that is not there does no harm.
        }
    }

    private static Path noteOf(Path temporary) {
        return NOTES.resolve(temporary.getFileName().toString());
    }

    /** A process by its number and the time of its start, since numbers come again. */
    private static String process(ProcessHandle process) {
        return process.pid() + " "
                + process.info().startInstant().map(Object::toString).orElse("");
    }

    private static void removeNoted(Path note) {
        try {
            List<String> lines = Files.readAllLines(note);
            boolean whole = lines.size() == 2;
            if (whole && isRunning(lines.get(1))) {
                return;
            }
            if (whole) {
                removeIfAbandoned(Path.of(lines.get(0)));
            }
            Files.deleteIfExists(note);
        } catch (IOException | InvalidPathException e) {
            // Not to be read; it is tried again.
        }
    }

    private static boolean isRunning(String process) {
        String pid = process.substring(0, process.indexOf(' '));
        return ProcessHandle.of(Long.parseLong(pid))
                .map(UnfinishedFiles::process)
                .filter(process::equals)
                .isPresent();
    }

    private static void removeIfAbandoned(Path file) {
        if (!TemporaryFile.isNamedLikeOne(file) || TemporaryFile.isAtWork(file)) {
            return;
        }
        try (FileChannel channel =
                FileChannel.open(file, Set.of(StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS))) {
            if (channel.tryLock(TemporaryFile.LOCKED_BYTE, 1, false) != null) {
                Files.deleteIfExists(file); // still locked, so that nobody begins to write it
            }
        } catch (IOException | OverlappingFileLockException e) {
            // Gone, somebody else's, or on a disk that knows no locks.
        }
    }
}
