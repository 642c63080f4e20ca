package weltwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.io.Backup;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.JobReplacement;
import weltwright.message.Messages;

/**
 * The job that is already in the file to which {@code make} writes its job. Without {@code --force} it is replaced only
 * where nothing is lost that the command would not make again.
 *
 * @param version of the file when it was read
 * @param job in the file; empty where there is none, or where it may be replaced in any case
 */
record ExistingJob(FileVersion version, Optional<Job> job) {
    private static final Messages TEXTS = Messages.of(ExistingJob.class);

    /**
     * Reads the file; throws {@link UserFacingException} where it exists and cannot be read.
     *
     * @param source input of {@code make}: a job may always replace itself
     * @param force whether any job may be replaced
     */
    static ExistingJob of(Path file, Path source, boolean force) {
        FileVersion version = FileVersion.of(file);
        boolean spared = version.sha256().isPresent() && !force && !isSameFile(file, source);
        return new ExistingJob(version, spared ? Optional.of(read(file)) : Optional.empty());
    }

    private static Job read(Path file) {
        try {
            return JobFile.read(file);
        } catch (UserFacingException e) {
            throw new UserFacingException(TEXTS.text("existing-job.there-is-a-file-already", file), remedy(file), e);
        }
    }

    static boolean isSameFile(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return false; // one of them does not exist
        }
    }

    /** Returns the day on which the existing job for a photo was begun; today where there is none. */
    LocalDate dateFor(Photo photo) {
        return job.filter(existing -> JobReplacement.isFromPhoto(existing, Optional.of(photo)))
                .map(Job::begun)
                .orElseGet(LocalDate::now);
    }

    /** Throws {@link UserFacingException} where the existing job is from another photo. */
    void checkPhoto(Job next) {
        if (job.isPresent() && !JobReplacement.isFromPhoto(job.get(), next.photo())) {
            throw refused(TEXTS.text("existing-job.from-another-photo"), "");
        }
    }

    /**
     * Throws {@link UserFacingException} where the replacement would lose something, as {@link JobReplacement#loss}
     * tells.
     *
     * @param next job in place of the existing one, with its outline
     */
    void checkReplacementBy(Job next) {
        Optional<JobReplacement.Loss> loss = job.flatMap(existing -> JobReplacement.loss(existing, next));
        if (loss.isPresent()) {
            throw switch (loss.get()) {
                case OTHER_PHOTO -> refused(TEXTS.text("existing-job.from-another-photo"), "");
                case MANUAL_WORK ->
                    refused(
                            TEXTS.text("existing-job.with-an-outline-corrected-by"),
                            TEXTS.text("existing-job.make-the-pattern-from-that"));
                case OTHER_CHOICES ->
                    refused(
                            TEXTS.text("existing-job.from-the-same-photo-with"),
                            TEXTS.text("existing-job.to-change-them-make-the"));
            };
        }
    }

    private UserFacingException refused(String what, String firstRemedy) {
        return new UserFacingException(
                TEXTS.text("existing-job.there-is-a-job-already", version.file(), what),
                firstRemedy + remedy(version.file()));
    }

    private static String remedy(Path file) {
        return TEXTS.text(
                "existing-job.give-another-folder-or-say", Backup.of(file).getFileName());
    }
}
