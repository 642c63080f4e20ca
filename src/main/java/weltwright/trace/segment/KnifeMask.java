package weltwright.trace.segment;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.parallel.ParallelPair;
import weltwright.message.Messages;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.appearance.RelativeReflectance;
import weltwright.trace.edge.EdgeTracker;
import weltwright.trace.visibility.PrintVisibility;

/**
 * Segments the part of a printed ground that the knife hides, to about half a millimetre.
 *
 * <p>Steel on white paper and a shadow on it may be equally grey, so brightness alone does not separate them. Three
 * cues do: the ground's lines are visible in a shadow and hidden by steel; a handle has a colour; the knife's edge is
 * sharp where a shadow fades. The steps:
 *
 * <ol>
 *   <li>rectify the photo onto the ground and divide it by the expected bare ground ({@link RelativeReflectance}, done
 *       by the caller);
 *   <li>learn the colours of knife and ground where print is hidden or visible ({@link ColourLikelihood});
 *   <li>set seeds of the ground (visible lines) and of the knife (hidden lines), and what the user marked;
 *   <li>assign all other pixels by a random walk, which colour pulls ({@link RandomWalkerSegmentation});
 *   <li>take the largest connected part of the knife.
 * </ol>
 *
 * The result is a rough contour; {@link EdgeTracker} locates the edge on the photo's own pixels.
 */
public final class KnifeMask {
    private static final Messages TEXTS = Messages.of(KnifeMask.class);

    /** Resolution of the print's and the sharpness' raster; the mask is half as fine. Chosen by eye, for speed. */
    public static final double MM_PER_PX = 0.2;

    /** Margin around the hidden lines, beyond one pitch, for an undecided line at the knife's end; chosen by eye. */
    private static final double MARGIN_MM = 10;

    private static final int GROUND = 1;
    private static final int KNIFE = 2;

    /** Probability by colour above which print cannot be visible; chosen by eye. */
    private static final double SURE = 0.95;

    /** Narrower bays of the mask are closed: artefacts, or shallow enough for the edge tracker; chosen by eye. */
    private static final double SLIT_MM = 2.2;

    /** Narrower spurs of the mask are removed; chosen by eye. */
    private static final double SPUR_MM = 1.6;

    /** Standard deviation of the blur for colours, in addition to that for the walk; chosen by eye. */
    private static final double COLOUR_BLUR_MM = 0.3;

    /** Directions to all four sides, since a line may run along either axis. */
    static final List<Point> ASIDE = List.of(new Point(1, 0), new Point(-1, 0), new Point(0, 1), new Point(0, -1));

    /** Distance from the gap of a line at which the ground beside it is sampled; chosen by eye. */
    static final double BESIDE_MM = 0.9;

    /** Least area of a knife: that of a blade of 60 mm by 10; chosen by eye. */
    private static final double SMALLEST_KNIFE_MM2 = 600;

    private final PlaneRaster raster;
    private final Mat ratio;
    private final PrintPattern pattern;
    private final double gapMm;

    /**
     * Prepares the segmentation; the matrices remain the caller's.
     *
     * @param ratio relative reflectance ({@link RelativeReflectance}) on the pattern's raster
     * @param pattern print of the bare ground
     * @param gapMm half the width of the gaps that printed lines leave in the pattern's masks
     */
    public KnifeMask(Mat ratio, PrintPattern pattern, double gapMm) {
        this.raster = pattern.raster();
        this.ratio = ratio;
        this.pattern = pattern;
        this.gapMm = gapMm;
    }

    /**
     * Returns a raster over the part of a ground in which print is hidden, with a margin for what lies between lines.
     *
     * @param bottomLeft corner of the ground, in mm; the raster keeps within it
     * @param topRight opposite corner
     * @param pitchMm distance of the ground's lines
     * @throws UserFacingException where nothing is hidden
     */
    public static PlaneRaster around(
            List<PrintVisibility.Observation> observations, Point bottomLeft, Point topRight, double pitchMm) {
        double room = pitchMm + MARGIN_MM;
        List<Point> hidden = PointCluster.largest(
                observations.stream()
                        .filter(s -> !s.visible())
                        .map(PrintVisibility.Observation::at)
                        .toList(),
                room);
        if (hidden.isEmpty()) {
            throw noKnife();
        }
        var xs = hidden.stream().mapToDouble(Point::x).summaryStatistics();
        var ys = hidden.stream().mapToDouble(Point::y).summaryStatistics();
        return PlaneRaster.covering(
                new Point(Math.max(bottomLeft.x(), xs.getMin() - room), Math.max(bottomLeft.y(), ys.getMin() - room)),
                new Point(Math.min(topRight.x(), xs.getMax() + room), Math.min(topRight.y(), ys.getMax() + room)),
                MM_PER_PX);
    }

    /**
     * The knife on a ground.
     *
     * @param contour on the ground's plane, closed and counter-clockwise, in mm
     * @param visibility of the print, without what other objects hide that the user told of
     */
    public record Found(Polyline contour, PrintVisibility visibility) {}

    /**
     * Finds the knife.
     *
     * @throws UserFacingException where nothing as large as a knife hides the ground
     */
    public Found find(PrintVisibility visibility) {
        ColourLikelihood.Estimate colour = estimate(visibility);
        Mat seeds = seeds(colour);
        Mat knife = RandomWalkerSegmentation.segment(ratio, seeds, colour.probability(), KNIFE, GROUND);
        seeds.release();
        return new Found(contour(knife), visibility.with(colour.observations()));
    }

    /**
     * Finds the knife on a ground as grey as steel, where edges are found by sharpness instead of colour.
     *
     * @param sharpness computes the sharpness on the same raster
     */
    public Found findAmongLines(PrintVisibility visibility, Supplier<SharpnessMap> sharpness) {
        ParallelPair<ColourLikelihood.Estimate, SharpnessMap> both =
                ParallelPair.of(() -> estimate(visibility), sharpness);
        ColourLikelihood.Estimate colour = both.first();
        Mat seeds = seeds(colour);
        Mat knife = RandomWalkerSegmentation.segment(both.second(), seeds, colour.probability(), KNIFE, GROUND);
        seeds.release();
        return new Found(contour(knife), visibility.with(colour.observations()));
    }

    private Polyline contour(Mat knife) {
        // Slits and spurs are due to lines, the edges of markers and narrow shades on the knife.
        smooth(knife, Imgproc.MORPH_CLOSE, SLIT_MM);
        smooth(knife, Imgproc.MORPH_OPEN, SPUR_MM);
        return largest(knife);
    }

    private void smooth(Mat mask, int operation, double widthMm) {
        int width = 2 * (int) Math.round(widthMm / raster.mmPerPx() / 2) + 1;
        Mat kernel = Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(width, width));
        Imgproc.morphologyEx(mask, mask, operation, kernel);
        kernel.release();
    }

    private Polyline largest(Mat knife) {
        List<MatOfPoint> contours = new ArrayList<>();
        Mat hierarchy = new Mat();
        Imgproc.findContours(knife, contours, hierarchy, Imgproc.RETR_EXTERNAL, Imgproc.CHAIN_APPROX_NONE);
        hierarchy.release();
        knife.release();
        MatOfPoint largest = null;
        double largestArea = SMALLEST_KNIFE_MM2 / (raster.mmPerPx() * raster.mmPerPx());
        for (MatOfPoint contour : contours) {
            double area = Imgproc.contourArea(contour);
            if (area > largestArea) {
                largestArea = area;
                largest = contour;
            }
        }
        if (largest == null) {
            throw noKnife();
        }
        List<Point> places = new ArrayList<>();
        for (org.opencv.core.Point p : largest.toArray()) {
            places.add(raster.pointAt(p.x, p.y));
        }
        Polyline contour = Polyline.closed(places);
        return contour.signedAreaMm2() > 0 ? contour : contour.reversed();
    }

    static UserFacingException noKnife() {
        return new UserFacingException(
                TEXTS.text("knife-mask.no-knife-is-to-be"), TEXTS.text("knife-mask.lay-the-knife-where-the"));
    }

    /** Returns for each pixel {@link #KNIFE}, {@link #GROUND}, or 0 where it is undecided. */
    private Mat seeds(ColourLikelihood.Estimate colour) {
        Mat seeds = new Mat(raster.rows(), raster.columns(), CvType.CV_32S, Scalar.all(0));
        for (PrintVisibility.Observation observation : colour.observations()) {
            Point px = raster.pixel(observation.at());
            if (raster.covers(px)
                    && !(observation.visible() && isKnifeBeside(observation.at(), colour.probability()))) {
                int label = observation.visible() ? GROUND : KNIFE;
                seeds.put((int) Math.round(px.y()), (int) Math.round(px.x()), new int[] {label});
            }
        }
        return seeds;
    }

    private float[] smoothed() {
        Mat smooth = new Mat();
        Imgproc.GaussianBlur(ratio, smooth, new Size(0, 0), COLOUR_BLUR_MM / raster.mmPerPx());
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        smooth.get(0, 0, bgr);
        smooth.release();
        return bgr;
    }

    /** Returns the probability of the knife by colour. */
    private ColourLikelihood.Estimate estimate(PrintVisibility visibility) {
        return new ColourLikelihood(pattern, smoothed(), gapMm).estimate(visibility);
    }

    /** Returns whether the colours beside a supposed line are the knife's: grain or a pattern that resembles a line. */
    private boolean isKnifeBeside(Point at, float[] probability) {
        int knife = 0;
        for (Point aside : ASIDE) {
            Point px = raster.pixel(at.plus(aside.times(gapMm + BESIDE_MM)));
            knife += raster.covers(px) && probability[raster.index(px)] > SURE ? 1 : 0;
        }
        return knife >= 2;
    }
}
