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

/**
 * Deletes temporary files of processes that were killed or lost power: at the next save into their folder, and at the
 * next start of the program in any folder. For the latter, each temporary file is registered by a note in the user's
 * own directory while it is being written. A file that another process is writing is locked and stays.
 *
 * <p>No method throws; a file that cannot be deleted is tried again the next time.
 */
public final class UnfinishedFiles {
    private static final Path NOTES = UserDirectory.STATE.path().resolve("unfinished");

    private UnfinishedFiles() {}

    /** Deletes the abandoned files in a folder. */
    public static void removeFrom(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, TemporaryFile.GLOB)) {
            files.forEach(UnfinishedFiles::removeIfAbandoned);
        } catch (IOException | RuntimeException e) {
            // The folder cannot be listed.
        }
    }

    /** Deletes all abandoned files of this user. */
    public static void removeAll() {
        try (DirectoryStream<Path> notes = Files.newDirectoryStream(NOTES, TemporaryFile.GLOB)) {
            notes.forEach(UnfinishedFiles::removeNoted);
        } catch (IOException | RuntimeException e) {
            // The directory of notes does not exist or cannot be listed.
        }
    }

    /** Registers a temporary file before it is made. */
    static void register(Path temporary) {
        try {
            Files.createDirectories(NOTES);
            Files.write(
                    noteOf(temporary),
                    List.of(temporary.toString(), ProcessIdentity.current().text()));
        } catch (IOException e) {
            // removeFrom still finds it.
        }
    }

    /** Deletes the note of a temporary file. */
    static void unregister(Path temporary) {
        try {
            Files.deleteIfExists(noteOf(temporary));
        } catch (IOException e) {
            // A note of a missing file is harmless.
        }
    }

    private static Path noteOf(Path temporary) {
        return NOTES.resolve(temporary.getFileName().toString());
    }

    private static void removeNoted(Path note) {
        try {
            List<String> lines = Files.readAllLines(note);
            boolean complete = lines.size() == 2;
            if (complete && new ProcessIdentity(lines.get(1)).isRunning()) {
                return;
            }
            if (complete) {
                removeIfAbandoned(Path.of(lines.get(0)));
            }
            Files.deleteIfExists(note);
        } catch (IOException | InvalidPathException e) {
            // Tried again at the next start.
        }
    }

    private static void removeIfAbandoned(Path file) {
        if (!TemporaryFile.hasTemporaryName(file) || TemporaryFile.isOpen(file)) {
            return;
        }
        try (FileChannel channel =
                FileChannel.open(file, Set.of(StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS))) {
            if (channel.tryLock(TemporaryFile.LOCKED_BYTE, 1, false) != null) {
                Files.deleteIfExists(file); // while locked, so that no process starts to write it
            }
        } catch (IOException | OverlappingFileLockException e) {
            // Deleted meanwhile, not accessible, or on a file system without locks.
        }
    }
}
