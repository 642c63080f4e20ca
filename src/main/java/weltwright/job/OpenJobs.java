package weltwright.job;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import weltwright.io.UserDirectory;

/**
 * Notes which jobs are open in windows of this user, and where their unsaved work is kept. Each window has a note, a
 * small file, which it deletes when it closes; a note whose process has ended tells of work that can be recovered.
 *
 * @param folder of the notes, and of the unsaved work of jobs that have no file or a write-protected folder
 */
public record OpenJobs(Path folder) {
    private static final String NOTE = ".note";

    /** Those in the directory that the operating system has for the state of programs. */
    public static OpenJobs standard() {
        return new OpenJobs(UserDirectory.STATE.path().resolve("open-jobs"));
    }

    /** Returns the entry of a new window, which has no job yet and writes nothing before it has. */
    public OpenJob begin() {
        String id = UUID.randomUUID().toString();
        return new OpenJob(this, folder.resolve(id + NOTE), folder.resolve(id + JobFile.EXTENSION));
    }

    /** Returns the jobs with unsaved work whose process has ended, the newest first. */
    public List<AbandonedJob> abandoned() {
        List<AbandonedJob> found = new ArrayList<>();
        for (OpenJobNote note : notes()) {
            if (!note.process().isRunning()) {
                AbandonedJob.of(this, note).ifPresentOrElse(found::add, note::delete);
            }
        }
        found.sort(Comparator.comparing(AbandonedJob::keptAt).reversed());
        return found;
    }

    /** Returns whether a window other than the one of the entry has a file open. */
    boolean isOpenElsewhere(Path file, Path ownNote) {
        return notes().stream()
                .filter(note -> !note.file().equals(ownNote) && note.process().isRunning())
                .anyMatch(note -> note.job().map(other -> isSame(other, file)).orElse(false));
    }

    private static boolean isSame(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return one.equals(other); // one of them is missing
        }
    }

    private List<OpenJobNote> notes() {
        List<OpenJobNote> notes = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + NOTE)) {
                for (Path file : files) {
                    OpenJobNote.read(file).ifPresent(notes::add);
                }
            } catch (IOException | RuntimeException e) {
                return List.of(); // the folder cannot be listed: nothing can be recovered
            }
        }
        return notes;
    }

    /** Returns the file beside a job in which its unsaved work is kept. */
    static Path unsavedWorkOf(Path job) {
        Path absolute = job.toAbsolutePath();
        return absolute.resolveSibling(absolute.getFileName() + ".unsaved");
    }

    /** Returns the file in which the work of a note is kept where it cannot be beside the job. */
    Path unsavedWorkInFolder(Path note) {
        String name = note.getFileName().toString();
        return folder.resolve(name.substring(0, name.length() - NOTE.length()) + JobFile.EXTENSION);
    }

    OpenJob adopt(OpenJobNote note) {
        return new OpenJob(this, note.file(), unsavedWorkInFolder(note.file()));
    }

    /** Returns an optional text as a line of a note; empty for none. */
    static String line(Optional<?> value) {
        return value.map(Object::toString).orElse("");
    }
}
