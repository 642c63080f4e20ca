package weltwright.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.io.FileVersion;
import weltwright.io.ProcessIdentity;
import weltwright.message.Messages;

/** A job with unsaved work whose process has ended, such as by a kill or a loss of power. */
public final class AbandonedJob {
    private static final Messages TEXTS = Messages.of(AbandonedJob.class);

    private final OpenJobs all;
    private final OpenJobNote note;
    private final Path unsaved;
    private final Instant keptAt;

    private AbandonedJob(OpenJobs all, OpenJobNote note, Path unsaved, Instant keptAt) {
        this.all = all;
        this.note = note;
        this.unsaved = unsaved;
        this.keptAt = keptAt;
    }

    /** Returns the work of a note; empty where all was saved or the work is gone. */
    static Optional<AbandonedJob> of(OpenJobs all, OpenJobNote note) {
        if (note.unsaved().isEmpty()) {
            return Optional.empty();
        }
        Path unsaved = note.unsaved().get();
        try {
            return Optional.of(new AbandonedJob(
                    all, note, unsaved, Files.getLastModifiedTime(unsaved).toInstant()));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Returns when the work was kept last. */
    public Instant keptAt() {
        return keptAt;
    }

    /** Returns the version of the job's file on which the work is based; empty for a job that was never saved. */
    public Optional<FileVersion> version() {
        return note.version();
    }

    /**
     * Reads the work.
     *
     * @throws UserFacingException if it cannot be read
     */
    public Job read() {
        return JobFile.read(unsaved);
    }

    /** Takes the entry over for a window of this process; the work stays kept meanwhile. */
    public OpenJob adopt() {
        new OpenJobNote(note.file(), ProcessIdentity.current(), note.job(), note.sha256(), Optional.of(unsaved))
                .write();
        return all.adopt(note);
    }

    /** Deletes the work. */
    public void discard() {
        try {
            Files.deleteIfExists(unsaved);
            note.delete();
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("abandoned-job.cannot-be-deleted", unsaved),
                    TEXTS.text("abandoned-job.delete-it-by-hand"),
                    e);
        }
    }
}
