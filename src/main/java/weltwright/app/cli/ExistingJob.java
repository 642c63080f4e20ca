package weltwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.io.Backup;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;

/**
 * The job that is already in the file to which {@code make} is to write one, if there is any, and whether that may take
 * its place: without being told, only where nothing is lost that the command would not make again.
 *
 * @param version what the file held when it was read
 * @param job what is in it; empty where there is none, or where it is not to be spared
 */
record ExistingJob(FileVersion version, Optional<Job> job) {

    /**
     * Reads what is there; throws {@link UserFacingException} where it cannot be read.
     *
     * @param source what {@code make} was given: a job may always be written over itself
     * @param force whether another one may be replaced, whatever is in it
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
            throw new UserFacingException(
                    "There is a file " + file + " already, and what is in it cannot be read.", remedy(file), e);
        }
    }

    static boolean isSameFile(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return false; // one of them is not there
        }
    }

    /** The day on which a job for a photo was begun: made again, it keeps its day. */
    LocalDate dateFor(Photo photo) {
        return job.filter(existing -> isOfPhoto(existing, Optional.of(photo)))
                .map(Job::begun)
                .orElseGet(LocalDate::now);
    }

    /** Throws {@link UserFacingException} where the job that is there came from another photo. */
    void checkPhoto(Job next) {
        if (job.isPresent() && !isOfPhoto(job.get(), next.photo())) {
            throw refused("from another photo", "");
        }
    }

    /**
     * Throws {@link UserFacingException} where the job that is there, of the same photo, holds work or words that would
     * be lost, or was made with other choices. Choices that make no pattern are not worth keeping.
     *
     * @param next the job that is to take its place, with its outline
     */
    void checkReplacementBy(Job next) {
        if (job.isEmpty()) {
            return;
        }
        Job existing = job.get();
        if (losesHandwork(existing, next) || losesWords(existing, next)) {
            throw refused(
                    "with an outline corrected by hand or with other words in it", "Make the pattern from that job. ");
        }
        boolean sameChoices = existing.settings().equals(next.settings())
                && existing.shaping().equals(next.shaping())
                && existing.spec().equals(next.spec());
        if (!sameChoices && makesAPattern(existing)) {
            throw refused("from the same photo with other choices", "To change them, make the pattern from that job. ");
        }
    }

    private UserFacingException refused(String what, String firstRemedy) {
        return new UserFacingException(
                "There is a job " + version.file() + " already, " + what + ".", firstRemedy + remedy(version.file()));
    }

    private static String remedy(Path file) {
        return "Give another folder, or say --force to replace it; it is then kept as "
                + Backup.of(file).getFileName() + ".";
    }

    private static boolean isOfPhoto(Job job, Optional<Photo> photo) {
        return Arrays.equals(
                job.photo().map(Photo::bytes).orElse(null),
                photo.map(Photo::bytes).orElse(null));
    }

    private static boolean losesHandwork(Job existing, Job next) {
        boolean lookedAt = existing.trace().isPresent()
                && !existing.unsure().equals(existing.trace().get().unsure());
        return (existing.isCorrected() && !existing.silhouette().equals(next.silhouette()))
                || (lookedAt && !existing.unsure().equals(next.unsure()))
                || (existing.spineOnLeft().isPresent()
                        && !existing.spineOnLeft().equals(next.spineOnLeft()))
                || (!existing.calipers().isEmpty() && !existing.calipers().equals(next.calipers()));
    }

    private static boolean losesWords(Job existing, Job next) {
        return holdsMore(existing.customer(), next.customer())
                || holdsMore(existing.knifeName(), next.knifeName())
                || holdsMore(existing.notes(), next.notes())
                || (existing.due().isPresent() && !existing.due().equals(next.due()));
    }

    private static boolean holdsMore(String existing, String next) {
        return !existing.isBlank() && !Objects.equals(existing, next);
    }

    private static boolean makesAPattern(Job job) {
        if (job.silhouette().isEmpty()) {
            return true; // nobody has tried yet
        }
        try {
            job.pattern();
            return true;
        } catch (UserFacingException e) {
            return false;
        }
    }
}
