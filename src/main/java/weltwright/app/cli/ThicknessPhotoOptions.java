package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.StandingPose;
import weltwright.knife.ThicknessProfile;
import weltwright.message.Messages;
import weltwright.trace.ProgressListener;
import weltwright.trace.thickness.ThicknessTracer;
import weltwright.units.Length;

/** The options for a second photo, of the knife standing upright, which shows its thickness along its length. */
final class ThicknessPhotoOptions {
    private static final Messages TEXTS = Messages.of(ThicknessPhotoOptions.class);

    @Option(names = "--thickness-photo", paramLabel = "PHOTO")
    private @Nullable Path photo;

    @Option(names = "--stands-on", paramLabel = "SIDE", defaultValue = "spine")
    private StandingPose.Foot foot;

    /** Returns the job traced again with the thicknesses from the second photo; unchanged without one. */
    Job applyTo(Job traced, ProgressListener progress) {
        if (photo == null) {
            return traced;
        }
        if (traced.isCorrectedBesidesGuard()) {
            throw new UserFacingException(
                    TEXTS.text("thickness-photo-options.the-outline-was-corrected-by"),
                    TEXTS.text("thickness-photo-options.open-the-job-in-the"));
        }
        ThicknessProfile profile = ThicknessTracer.trace(
                Photo.read(photo),
                traced.settings().elsewhere(),
                traced.assumingUsualThicknesses().knife(),
                foot,
                progress);
        return traced.withSettings(traced.settings().withThickness(profile))
                .traced(progress)
                .withGuardOf(traced);
    }

    /** Prints the thicknesses along the knife, from the photo or typed. */
    static void print(ThicknessProfile profile, PrintWriter out) {
        if (!profile.isEmpty()) {
            StringBuilder line =
                    new StringBuilder(TEXTS.text("thickness-photo-options.thickness-along-the-knife-from"));
            for (ThicknessProfile.Reading reading : profile.readings()) {
                line.append(line.charAt(line.length() - 1) == ':' ? " " : ", ")
                        .append(new Length(reading.thicknessMm()).inMillimetres())
                        .append(TEXTS.text("thickness-photo-options.at"))
                        .append(new Length(reading.fromTipMm()).inMillimetres());
            }
            out.println(line.append('.'));
        }
    }
}
