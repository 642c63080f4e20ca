package weltwright.camera.adjustment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.fit.SymmetricSystem;

/**
 * Solves for the camera and its pose from control points of the ground: focal length, two terms of radial distortion,
 * principal point and pose at once.
 *
 * <p>Finds the most probable parameters: squared residuals over their variance, with Cauchy's function against
 * outliers, plus the prior of the lens. The prior decides only what the points leave open. Seen from straight above
 * they do not determine the focal length; from a tilt of a few degrees on they determine it far better than Exif does.
 *
 * <p>The steps:
 *
 * <ol>
 *   <li>from one start, or four along a wide prior of the focal length, estimate a pose and fit coarsely to a sample of
 *       the points;
 *   <li>take the start with the least cost and fit it to the sample, then to all points.
 * </ol>
 *
 * <p>Sources: Triggs et al., <i>Bundle adjustment: a modern synthesis</i> (2000), for cost and covariance; Hartley and
 * Zisserman, <i>Multiple View Geometry</i>, for the camera model. The principal point is assumed near the picture's
 * middle, which does not hold for a cropped picture ({@link LensPrior#forCroppedPicture}).
 */
public final class ViewSolver {
    /** Number of parameters of a view: ln f, k1, k2, cx, cy, three of rotation, three of translation. */
    private static final int VIEW_PARAMETERS = BundleAdjustment.LENS + BundleAdjustment.POSE;

    /** Standard deviation of the stretch of a ground with exact proportions. */
    private static final double NO_STRETCH = 1e-6;

    /**
     * Least standard deviation of a detected point, in pixels, so that a chance fit does not claim more. Chosen by eye.
     */
    public static final double LEAST_PIXEL_SIGMA = 0.03;

    /** Number of points with which the starts are compared. Chosen by eye. */
    private static final int SAMPLE_SIZE = 60;

    /** Standard deviation assumed for the first coarse fit, in pixels. Chosen by eye. */
    private static final double INITIAL_SIGMA_PX = 1;

    private ViewSolver() {}

    /**
     * The solved view with its errors.
     *
     * @param view camera and pose
     * @param covariance of (ln f, k1, k2, cx, cy, rotation, translation), 11 × 11, by the noise of the points and the
     *     priors
     * @param pixelSigma standard deviation of a coordinate of a point, in pixels, robustly estimated
     * @param inliers number of points within three standard deviations
     * @param logStretch logarithm of the ratio of the ground's true scales along x and y, over the assumed one
     * @param logStretchSigma standard deviation of logStretch
     */
    public record Solution(
            CameraView view,
            double[][] covariance,
            double pixelSigma,
            int inliers,
            double logStretch,
            double logStretchSigma) {

        /** Returns the relative standard deviation of the focal length. */
        public double focalRelativeSigma() {
            return Math.sqrt(covariance[0][0]);
        }

        /**
         * Returns views that each deviate by one standard deviation, independently of each other (the columns of the
         * covariance's Cholesky factor). The first deviates in the focal length and in what correlates with it; the
         * others keep the focal length.
         */
        public List<CameraView> sigmaViews() {
            double[][] deviations = new SymmetricSystem(covariance).lowerFactor();
            List<CameraView> views = new ArrayList<>();
            for (int k = 0; k < VIEW_PARAMETERS; k++) {
                double[] p = BundleAdjustment.parametersOf(view);
                for (int i = 0; i < VIEW_PARAMETERS; i++) {
                    p[i] += deviations[i][k];
                }
                views.add(BundleAdjustment.view(p));
            }
            return views;
        }
    }

    /**
     * Solves on a ground with exact proportions.
     *
     * @param references at least six, not all on one line
     * @param widthPx of the picture
     * @param heightPx of the picture
     */
    public static Solution solve(List<ControlPoint> references, int widthPx, int heightPx, LensPrior prior) {
        return solve(references, widthPx, heightPx, prior, NO_STRETCH);
    }

    /**
     * Solves on a ground whose proportions are inexact: x may be longer by a small factor and y shorter by the same.
     * The foreshortening by tilt determines the focal length, so that without this allowance paper cut 0.1 % too narrow
     * would change the focal length by 2 %.
     *
     * @param stretchSigma standard deviation of the ratio of the scales along x and y
     */
    public static Solution solve(
            List<ControlPoint> references, int widthPx, int heightPx, LensPrior prior, double stretchSigma) {
        return solve(references, widthPx, heightPx, prior, stretchSigma, LEAST_PIXEL_SIGMA);
    }

    /**
     * Solves from points of known least error, such as four corners set by hand, which always fit exactly.
     *
     * @param references at least four
     * @param leastPixelSigma least standard deviation of a coordinate, in pixels
     */
    public static Solution solve(
            List<ControlPoint> references,
            int widthPx,
            int heightPx,
            LensPrior prior,
            double stretchSigma,
            double leastPixelSigma) {
        double cx = (widthPx - 1) / 2.0;
        double cy = (heightPx - 1) / 2.0;
        List<List<ControlPoint>> sample = List.of(sample(references));
        // A single start far from the solution could end in a wrong minimum.
        double[] steps = prior.focalRelativeSigma() > 0.1 ? new double[] {-0.4, 0, 0.4, 0.8} : new double[] {0};
        List<BundleAdjustment> fits = Arrays.stream(steps)
                .parallel()
                .mapToObj(step -> new PinholeCamera(prior.focalPx() * Math.exp(step), cx, cy, prior.k1(), prior.k2()))
                .map(camera -> new BundleAdjustment(
                        sample, prior, stretchSigma, leastPixelSigma, BundleAdjustment.starts(sample, camera)))
                .map(fit -> fit.runCoarsely(INITIAL_SIGMA_PX))
                .toList();
        double least = Math.max(
                leastPixelSigma,
                fits.stream().mapToDouble(fit -> fit.robustSigma(0)).min().orElseThrow());
        BundleAdjustment best = fits.parallelStream()
                .map(fit -> fits.size() == 1 ? fit : fit.runCoarsely(least))
                .min(Comparator.comparingDouble(BundleAdjustment::cost))
                .orElseThrow();
        return solution(best.run().withObservations(List.of(references)).run());
    }

    /** Takes every n-th control point, so that they are spread over the ground; all where they are few. */
    private static List<ControlPoint> sample(List<ControlPoint> references) {
        double step = Math.max(1, references.size() / (double) SAMPLE_SIZE);
        List<ControlPoint> sample = new ArrayList<>();
        for (double k = 0; k < references.size(); k += step) {
            sample.add(references.get((int) k));
        }
        return sample;
    }

    private static Solution solution(BundleAdjustment fit) {
        double[][] all = fit.covariance();
        double[][] covariance = new double[VIEW_PARAMETERS][];
        Arrays.setAll(covariance, k -> Arrays.copyOf(all[k], VIEW_PARAMETERS));
        return new Solution(
                fit.view(0),
                covariance,
                fit.pixelSigma(0),
                fit.inliers(0),
                fit.logStretch(),
                Math.sqrt(all[VIEW_PARAMETERS][VIEW_PARAMETERS]));
    }
}
