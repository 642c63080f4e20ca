package weltwright.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.FileVersion;
import weltwright.io.ProcessIdentity;
import weltwright.message.Messages;

/**
 * The entry of a window among the {@link OpenJobs}. Keeps the unsaved work of its job in a file: beside the job's own
 * file, or in the folder of the notes where the job has none, its folder cannot be written to, or another window has
 * the same job open. Not safe for use by several threads at once.
 */
public final class OpenJob implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(OpenJob.class);

    private final OpenJobs all;
    private final Path note;
    private final Path inFolder;
    private Optional<Path> unsaved;

    OpenJob(OpenJobs all, Path note, Path inFolder) {
        this.all = all;
        this.note = note;
        this.inFolder = inFolder;
        this.unsaved = OpenJobNote.read(note).flatMap(OpenJobNote::unsaved);
    }

    /** Returns whether another window has this file open. */
    public boolean isOpenElsewhere(Path file) {
        return all.isOpenElsewhere(file, note);
    }

    /**
     * Notes that a job is open and saved; unsaved work that was kept before is deleted.
     *
     * @param version the file that the job was read from or saved to; empty where it has none
     * @throws UserFacingException if the note cannot be written
     */
    public void noteSaved(Optional<FileVersion> version) {
        Optional<Path> before = unsaved;
        unsaved = Optional.empty();
        if (version.isPresent()) {
            writeNote(version);
        } else {
            deleteQuietly(note);
        }
        before.ifPresent(OpenJob::deleteQuietly);
    }

    /**
     * Keeps unsaved work.
     *
     * @param version the file that the job was read from or saved to; empty where it has none
     * @throws UserFacingException if it can be written nowhere
     */
    public void keep(Job job, Optional<FileVersion> version) {
        Optional<Path> before = unsaved;
        Optional<Path> beside = version.map(FileVersion::file)
                .filter(file -> !isOpenElsewhere(file))
                .map(OpenJobs::unsavedWorkOf);
        unsaved = Optional.of(beside.filter(file -> write(job, file)).orElseGet(() -> {
            createFolder();
            AtomicFile.of(inFolder, JobFile.KIND).write(out -> JobFile.write(job, out));
            return inFolder;
        }));
        if (!unsaved.equals(before) || !Files.exists(note)) {
            writeNote(version);
            before.filter(file -> !unsaved.equals(Optional.of(file))).ifPresent(OpenJob::deleteQuietly);
        }
    }

    /** Ends the entry: what is not saved by now is not wanted. */
    @Override
    public void close() {
        deleteQuietly(note);
        unsaved.ifPresent(OpenJob::deleteQuietly);
        unsaved = Optional.empty();
    }

    private static boolean write(Job job, Path file) {
        try {
            AtomicFile.of(file, JobFile.KIND).write(out -> JobFile.write(job, out));
            return true;
        } catch (UserFacingException e) {
            return false; // the folder is write-protected, full or gone
        }
    }

    private void writeNote(Optional<FileVersion> version) {
        createFolder();
        new OpenJobNote(
                        note,
                        ProcessIdentity.current(),
                        version.map(file -> file.file().toAbsolutePath()),
                        version.flatMap(FileVersion::sha256),
                        unsaved)
                .write();
    }

    private void createFolder() {
        try {
            Files.createDirectories(all.folder());
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("open-job.work-that-is-not-saved", all.folder()),
                    TEXTS.text("open-job.save-the-job-often-or"),
                    e);
        }
    }

    private static void deleteQuietly(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // What stays is offered once more at the next start.
        }
    }
}
