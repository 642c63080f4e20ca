package weltwright.trace.segment;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.opencv.core.Core;
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
import weltwright.image.opencv.MaskedFill;
import weltwright.image.parallel.ParallelPair;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.appearance.RelativeReflectance;
import weltwright.trace.edge.EdgeTracker;
import weltwright.trace.visibility.PrintVisibility;

/**
 * Which part of a printed ground the knife hides, to about half a millimetre.
 *
 * <p>Steel on white paper and a shadow on it may be equally grey, so brightness alone does not tell them apart. Three
 * things do: a shadow lets the ground's lines through, and steel does not; a handle has a colour; and the knife's edge
 * is sharp where a shadow fades. Hence the steps:
 *
 * <ol>
 *   <li>rectify the picture onto the ground and divide by what the bare ground would look like there
 *       ({@link RelativeReflectance});
 *   <li>mark what is ground for sure (lit paper; a line to be seen) and what is knife for sure (a line that is missing;
 *       a colour that no shadow has; brightness where black is printed);
 *   <li>give each other place to the one that walkers from there, held up by edges, sooner come to
 *       ({@link RandomWalkerSegmentation});
 *   <li>take the largest part that is knife.
 * </ol>
 *
 * It stops at a rough contour; {@link EdgeTracker} finds the edge itself on the picture's own pixels.
 */
public final class KnifeMask {
    /** Of what is printed, and of what is looked at for sharpness; the mask itself is half as fine. */
    public static final double MM_PER_PX = 0.2;

    /**
     * An end may reach beyond the last line that it hides as far as the next one; grain may hide from us that one is
     * hidden.
     */
    private static final double ROOM_MM = 10;

    /** What a ratio is where lit ground is seen. */
    private static final double LIT = RelativeReflectance.LIT;

    private static final int GROUND = 1;
    private static final int KNIFE = 2;

    /** Lit paper differs from the fitted light by grain, dents and a gentle reflection: by less than this. */
    private static final double PAPER_TOLERANCE = 0.07;

    /** Skylight tints a shadow by up to about a tenth; wood and coloured scales differ by more. */
    private static final double COLOUR = 0.16;

    /** Nothing indoors throws a shadow as dark as this part of the lit paper. */
    private static final double DARK = 0.25;

    /** Black print that looks this much brighter than black print is not to be seen. */
    private static final double NOT_BLACK = 2.2;

    /** A bay of the mask that is narrower than this is none of the knife's, or shallow enough to be found again. */
    private static final double SLIT_MM = 2.2;

    /** A spur that is narrower than this is no part of a knife. */
    private static final double SPUR_MM = 1.6;

    /** Standard deviation of what noise is averaged over for seeds, besides what it is for the walk. */
    private static final double SEED_BLUR_MM = 0.3;

    /** To all four sides, since a line may run either way. */
    private static final List<Point> ASIDE =
            List.of(new Point(1, 0), new Point(-1, 0), new Point(0, 1), new Point(0, -1));

    /** A patch of ground begins so far beside the gap that a line leaves. */
    private static final double BESIDE_MM = 0.9;

    /** As much as a blade of 60 mm by 10: what hides less is no knife to make a sheath for. */
    private static final double SMALLEST_KNIFE_MM2 = 600;

    private final PlaneRaster raster;
    private final Mat ratio;
    private final PrintPattern pattern;
    private final double gapMm;

    /**
     * @param ratio as {@link RelativeReflectance} has it, on the pattern's raster
     * @param pattern the bare ground
     * @param gapMm half the width of the gaps that printed lines leave in what is known of the ground
     */
    public KnifeMask(Mat ratio, PrintPattern pattern, double gapMm) {
        this.raster = pattern.raster();
        this.ratio = ratio;
        this.pattern = pattern;
        this.gapMm = gapMm;
    }

    /**
     * The part of a ground in which its print is hidden, with room for as much again as no print may show.
     *
     * @param pitchMm of the ground's lines
     */
    public static PlaneRaster around(
            List<PrintVisibility.Sight> sights, Point bottomLeft, Point topRight, double pitchMm) {
        double room = pitchMm + ROOM_MM;
        List<Point> hidden = PointCluster.largest(
                sights.stream()
                        .filter(s -> !s.visible())
                        .map(PrintVisibility.Sight::at)
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

    /** The contour of what hides the ground, on the ground's plane, closed and counter-clockwise, in mm. */
    public Polyline contour(List<PrintVisibility.Sight> sights) {
        Mat seeds = seeds(sights);
        Mat knife = RandomWalkerSegmentation.part(ratio, seeds, KNIFE, GROUND);
        seeds.release();
        return contour(knife);
    }

    /**
     * The same on a ground as grey as steel, where only the sharpness of the knife's edges tells.
     *
     * @param sharpness gives it on the same raster
     */
    public Polyline contourAmongLines(List<PrintVisibility.Sight> sights, Supplier<SharpnessMap> sharpness) {
        ParallelPair<Mat, SharpnessMap> both = ParallelPair.of(() -> seeds(sights), sharpness);
        Mat knife = RandomWalkerSegmentation.part(both.second(), both.first(), KNIFE, GROUND);
        both.first().release();
        return contour(knife);
    }

    private Polyline contour(Mat knife) {
        // Slits and spurs come of lines, of markers' edges and of narrow shades on the knife.
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
            places.add(raster.place(p.x, p.y));
        }
        Polyline contour = Polyline.closed(places);
        return contour.signedAreaMm2() > 0 ? contour : contour.reversed();
    }

    static UserFacingException noKnife() {
        return new UserFacingException(
                "No knife is to be seen on the ground.",
                "Lay the knife where the ground's lines are, so that it stands out from it.");
    }

    /** For each place {@link #KNIFE}, {@link #GROUND}, or 0 where it is neither for sure. */
    private Mat seeds(List<PrintVisibility.Sight> sights) {
        byte[] bgr = smoothed();
        Mat seeds = ofColour(bgr);
        // A pixel of noise must not seed a region.
        for (int label : new int[] {GROUND, KNIFE}) {
            erode(seeds, label);
        }
        dropContradicted(seeds, sights);
        for (PrintVisibility.Sight sight : sights) {
            Point px = raster.pixel(sight.at());
            if (raster.covers(px) && !(sight.visible() && isKnifeBeside(sight.at(), bgr))) {
                int label = sight.visible() ? GROUND : KNIFE;
                seeds.put((int) Math.round(px.y()), (int) Math.round(px.x()), new int[] {label});
            }
        }
        return seeds;
    }

    private byte[] smoothed() {
        Mat smooth = new Mat();
        Imgproc.GaussianBlur(ratio, smooth, new Size(0, 0), SEED_BLUR_MM / raster.mmPerPx());
        smooth.convertTo(smooth, CvType.CV_8U);
        byte[] bgr = new byte[3 * raster.columns() * raster.rows()];
        smooth.get(0, 0, bgr);
        smooth.release();
        return bgr;
    }

    /** What the colour of each place tells by itself. */
    private Mat ofColour(byte[] bgr) {
        int[] seeds = new int[raster.columns() * raster.rows()];
        byte[] paper = new byte[seeds.length];
        byte[] black = new byte[seeds.length];
        pattern.paper().get(0, 0, paper);
        pattern.black().get(0, 0, black);
        for (int i = 0; i < seeds.length; i++) {
            int b = bgr[3 * i] & 255;
            int g = bgr[3 * i + 1] & 255;
            int r = bgr[3 * i + 2] & 255;
            if (paper[i] != 0) {
                if (farthest(b, g, r, LIT) < PAPER_TOLERANCE * LIT) {
                    seeds[i] = GROUND;
                } else if (isKnife(b, g, r)) {
                    seeds[i] = KNIFE;
                }
            } else if (black[i] != 0 && (b + g + r) / 3.0 > NOT_BLACK * LIT) {
                seeds[i] = KNIFE;
            }
        }
        Mat seedMat = new Mat(raster.rows(), raster.columns(), CvType.CV_32S);
        seedMat.put(0, 0, seeds);
        return seedMat;
    }

    /**
     * Takes back patches of supposed lit ground beside which the print is hidden: a blade as bright as paper. A patch
     * reaches from line to line.
     */
    private void dropContradicted(Mat seeds, List<PrintVisibility.Sight> sights) {
        Mat ground = new Mat();
        Core.compare(seeds, new Scalar(GROUND), ground, Core.CMP_EQ);
        Mat patches = new Mat();
        int count = Imgproc.connectedComponents(ground, patches, 4, CvType.CV_32S);
        int[] patch = new int[patches.rows() * patches.cols()];
        patches.get(0, 0, patch);
        int[] visible = new int[count];
        int[] hidden = new int[count];
        for (PrintVisibility.Sight sight : sights) {
            for (Point aside : ASIDE) {
                Point px = raster.pixel(sight.at().plus(aside.times(gapMm + BESIDE_MM)));
                if (raster.covers(px)) {
                    int at = patch[raster.index(px)];
                    visible[at] += sight.visible() ? 1 : 0;
                    hidden[at] += sight.visible() ? 0 : 1;
                }
            }
        }
        int[] seed = new int[patch.length];
        seeds.get(0, 0, seed);
        for (int i = 0; i < patch.length; i++) {
            if (patch[i] > 0 && hidden[patch[i]] > visible[patch[i]]) {
                seed[i] = 0;
            }
        }
        seeds.put(0, 0, seed);
        ground.release();
        patches.release();
    }

    /** A grain or a pattern that looks like a line is not one: there is no ground beside it. */
    private boolean isKnifeBeside(Point at, byte[] bgr) {
        int knife = 0;
        for (Point aside : ASIDE) {
            Point px = raster.pixel(at.plus(aside.times(gapMm + BESIDE_MM)));
            if (raster.covers(px)) {
                int i = raster.index(px);
                knife += isKnife(bgr[3 * i] & 255, bgr[3 * i + 1] & 255, bgr[3 * i + 2] & 255) ? 1 : 0;
            }
        }
        return knife >= 2;
    }

    /** Whether no shadow on the ground has this colour. */
    private static boolean isKnife(int b, int g, int r) {
        double mean = (b + g + r) / 3.0;
        return mean < DARK * LIT || farthest(b, g, r, mean) > COLOUR * mean;
    }

    private static double farthest(int b, int g, int r, double from) {
        return Math.max(Math.abs(b - from), Math.max(Math.abs(g - from), Math.abs(r - from)));
    }

    private static void erode(Mat seeds, int label) {
        Mat mine = new Mat();
        Core.compare(seeds, new Scalar(label), mine, Core.CMP_EQ);
        Mat core = new Mat();
        Mat kernel = Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(3, 3));
        Imgproc.erode(mine, core, kernel);
        Core.subtract(mine, core, mine);
        MaskedFill.where(mine, seeds, 0);
        mine.release();
        core.release();
        kernel.release();
    }
}
