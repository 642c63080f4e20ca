package weltwright.job;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;

/** Decides whether a job may replace another one without losing anything that making it again would not bring back. */
public final class JobReplacement {

    /** What a replacement would lose. */
    public enum Loss {
        /** A job from another photo. */
        OTHER_PHOTO,
        /** An outline corrected by hand, caliper measures, or texts of the order. */
        MANUAL_WORK,
        /** Other settings or choices for the sheath, which make a pattern. */
        OTHER_CHOICES
    }

    private JobReplacement() {}

    /** Returns whether a job is from a photo, compared by the bytes of its file. */
    public static boolean isFromPhoto(Job job, Optional<Photo> photo) {
        return Arrays.equals(
                job.photo().map(Photo::bytes).orElse(null),
                photo.map(Photo::bytes).orElse(null));
    }

    /**
     * Returns what would be lost; empty for nothing. Choices that make no pattern do not count.
     *
     * @param next job in place of the existing one, with its outline
     */
    public static Optional<Loss> loss(Job existing, Job next) {
        if (!isFromPhoto(existing, next.photo())) {
            return Optional.of(Loss.OTHER_PHOTO);
        }
        if (losesCorrections(existing, next) || losesTexts(existing, next)) {
            return Optional.of(Loss.MANUAL_WORK);
        }
        boolean sameChoices = existing.settings().equals(next.settings())
                && existing.shaping().equals(next.shaping())
                && existing.spec().equals(next.spec());
        return !sameChoices && mayMakePattern(existing) ? Optional.of(Loss.OTHER_CHOICES) : Optional.empty();
    }

    private static boolean losesCorrections(Job existing, Job next) {
        boolean reviewed = existing.trace().isPresent()
                && !existing.unsure().equals(existing.trace().get().unsure());
        return (existing.isCorrected() && !existing.silhouette().equals(next.silhouette()))
                || (reviewed && !existing.unsure().equals(next.unsure()))
                || (existing.spineOnLeft().isPresent()
                        && !existing.spineOnLeft().equals(next.spineOnLeft()))
                || (!existing.calipers().isEmpty() && !existing.calipers().equals(next.calipers()));
    }

    private static boolean losesTexts(Job existing, Job next) {
        return losesText(existing.customer(), next.customer())
                || losesText(existing.knifeName(), next.knifeName())
                || losesText(existing.notes(), next.notes())
                || (existing.due().isPresent() && !existing.due().equals(next.due()));
    }

    private static boolean losesText(String existing, String next) {
        return !existing.isBlank() && !Objects.equals(existing, next);
    }

    /** A job without an outline counts as one that makes a pattern, since that is not known yet. */
    private static boolean mayMakePattern(Job job) {
        if (job.silhouette().isEmpty()) {
            return true;
        }
        try {
            job.assumingUsualThicknesses().pattern();
            return true;
        } catch (UserFacingException e) {
            return false;
        }
    }
}
