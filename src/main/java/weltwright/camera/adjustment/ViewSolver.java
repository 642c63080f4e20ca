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
 * The camera and pose that explain best where reference points of the ground are seen: the focal length, two terms of
 * radial distortion, where the optical axis meets the picture, and the pose, all at once.
 *
 * <p>The most probable values are sought: squared residuals over their variance, by Cauchy's function so that a wrong
 * point counts for little, plus a prior on the lens. The prior decides only what the points leave open; seen from
 * straight above they say nothing of the focal length, tilted by a few degrees they pin it far better than Exif does.
 *
 * <p>Sources: Triggs et al., <i>Bundle adjustment: a modern synthesis</i> (2000), for the cost and its covariance;
 * Hartley and Zisserman, <i>Multiple View Geometry</i>, for the pinhole model. The optical axis is taken to meet the
 * picture near its middle, which a picture that was cut out of a larger one breaks
 * ({@link LensPrior#forCroppedPicture}).
 */
public final class ViewSolver {
    /** Parameters of a view: ln f, k1, k2, cx, cy, three of rotation, three of translation. */
    private static final int VIEW_PARAMETERS = BundleAdjustment.LENS + BundleAdjustment.POSE;

    /** Of a ground whose proportions are not in doubt. */
    private static final double NO_STRETCH = 1e-6;

    /** Corners found by gradients are seldom better than this; keeps a lucky fit from claiming more. */
    public static final double LEAST_PIXEL_SIGMA = 0.03;

    /** Enough references to tell the valleys of several starts apart; the descent in the best is by all of them. */
    private static final int TO_CHOOSE_BY = 60;

    /** From a first guess on, most references are this near to where they should be, in pixels. */
    private static final double FAR_PX = 1;

    private ViewSolver() {}

    /**
     * The camera and its pose that fit the references best, with their errors.
     *
     * @param view the solution
     * @param covariance of (ln f, k1, k2, cx, cy, rotation, translation), 11 × 11, as far as the pixels' noise goes
     * @param pixelSigma the noise of one coordinate of a reference point, in pixels, robustly estimated
     * @param inliers how many references lie within three of it
     * @param logStretch logarithm of how much longer the ground is along x in truth, against along y, than was said
     * @param logStretchSigma its standard deviation
     */
    public record Solution(
            CameraView view,
            double[][] covariance,
            double pixelSigma,
            int inliers,
            double logStretch,
            double logStretchSigma) {

        /** Standard deviation of the focal length, as a part of it. */
        public double focalRelativeSigma() {
            return Math.sqrt(covariance[0][0]);
        }

        /**
         * Views that are each off by one standard deviation, independently of each other. The first is off in its focal
         * length, and in all else as far as that goes with it; the others are off with the focal length right.
         */
        public List<CameraView> sigmaViews() {
            double[][] moves = new SymmetricSystem(covariance).lowerFactor();
            List<CameraView> views = new ArrayList<>();
            for (int k = 0; k < VIEW_PARAMETERS; k++) {
                double[] p = BundleAdjustment.ofView(view);
                for (int i = 0; i < VIEW_PARAMETERS; i++) {
                    p[i] += moves[i][k];
                }
                views.add(BundleAdjustment.view(p));
            }
            return views;
        }
    }

    /**
     * Solves for the camera and its pose from points of known place on the ground.
     *
     * @param references at least six, not all on one line; those on an edge count across it only
     * @param widthPx of the picture
     * @param heightPx of the picture
     */
    public static Solution solve(List<ControlPoint> references, int widthPx, int heightPx, LensPrior prior) {
        return solve(references, widthPx, heightPx, prior, NO_STRETCH);
    }

    /**
     * The same on a ground whose proportions are known no better than so: each x may be longer in truth by a small
     * part, and each y shorter by as much. Tilt shortens the ground's picture one way too, and what is seen of that
     * says how long the lens is; paper that is cut 0.1 % too narrow would be taken for a lens that is off by 2 %, were
     * it not allowed for.
     *
     * @param stretchSigma standard deviation of the ratio of the scales along x and y, over 1
     */
    public static Solution solve(
            List<ControlPoint> references, int widthPx, int heightPx, LensPrior prior, double stretchSigma) {
        return solve(references, widthPx, heightPx, prior, stretchSigma, LEAST_PIXEL_SIGMA);
    }

    /**
     * The same from points that may be off by so much however well they fit, as four corners set by hand always do.
     *
     * @param references at least four
     * @param leastPixelSigma the least standard deviation of one of their coordinates, in pixels
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
        List<List<ControlPoint>> few = List.of(spread(references));
        // A wide prior may start far off; a few starts along it make sure of the right valley.
        double[] steps = prior.focalRelativeSigma() > 0.1 ? new double[] {-0.4, 0, 0.4, 0.8} : new double[] {0};
        List<BundleAdjustment> fits = Arrays.stream(steps)
                .parallel()
                .mapToObj(step -> new PinholeCamera(prior.focalPx() * Math.exp(step), cx, cy, prior.k1(), prior.k2()))
                .map(camera -> new BundleAdjustment(
                        few, prior, stretchSigma, leastPixelSigma, BundleAdjustment.starts(few, camera)))
                .map(fit -> fit.roughly(FAR_PX))
                .toList();
        double least = Math.max(
                leastPixelSigma,
                fits.stream().mapToDouble(fit -> fit.robustSigma(0)).min().orElseThrow());
        BundleAdjustment best = fits.parallelStream()
                .map(fit -> fits.size() == 1 ? fit : fit.roughly(least))
                .min(Comparator.comparingDouble(BundleAdjustment::cost))
                .orElseThrow();
        return solution(best.run().by(List.of(references)).run());
    }

    /** Some of the references, from all over the ground as they follow each other; all where they are few. */
    private static List<ControlPoint> spread(List<ControlPoint> references) {
        double step = Math.max(1, references.size() / (double) TO_CHOOSE_BY);
        List<ControlPoint> few = new ArrayList<>();
        for (double k = 0; k < references.size(); k += step) {
            few.add(references.get((int) k));
        }
        return few;
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
