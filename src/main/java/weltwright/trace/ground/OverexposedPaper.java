package weltwright.trace.ground;

import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.error.UserFacingException;
import weltwright.image.ExposureStatistics;
import weltwright.message.Messages;

/** Overexposed paper, on which steel of the same brightness is invisible. */
final class OverexposedPaper {
    private static final Messages TEXTS = Messages.of(OverexposedPaper.class);

    /** Overexposed part above which paper is; knife and shadow take less than half of it. Chosen by eye. */
    private static final double BURNT_PART = 0.5;

    private OverexposedPaper() {}

    /**
     * Checks that paper is not overexposed.
     *
     * @param seen the paper without black print, as the photo shows it: blue, green, red
     * @param remedy what the user should do if it is
     * @throws UserFacingException if it is
     */
    static void check(Mat seen, String remedy) {
        Mat burnt = new Mat();
        Core.inRange(seen, Scalar.all(ExposureStatistics.CLIPPED_LEVEL), Scalar.all(255), burnt);
        double part = Core.countNonZero(burnt) / (double) burnt.total();
        burnt.release();
        if (part > BURNT_PART) {
            throw new UserFacingException(TEXTS.text("overexposed-paper.the-paper-is-burnt-out"), remedy);
        }
    }
}
