package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.ReferenceSheet;
import weltwright.ground.View;
import weltwright.measure.PrintScale;
import weltwright.trouble.Trouble;

/**
 * Which part of the reference sheet the knife hides, to about half a millimetre.
 *
 * <p>Steel on white paper and a shadow on it may be equally grey, so brightness alone does not tell them apart. Three
 * things do: a shadow lets the sheet's blue lines through, and steel does not; a handle has a colour; and the knife's
 * edge is sharp where a shadow fades. Hence the steps:
 *
 * <ol>
 *   <li>rectify the picture onto the sheet and divide by what the bare sheet would look like there;
 *   <li>mark what is sheet for sure (lit paper; a line to be seen) and what is knife for sure (a line that is missing;
 *       a colour that no shadow has; brightness where black is printed);
 *   <li>let both grow from there until they meet at the sharpest edges between them (Meyer's watershed);
 *   <li>take the largest part that is knife.
 * </ol>
 *
 * It stops at a rough contour; {@link EdgePath} finds the edge itself on the picture's own pixels.
 */
final class KnifeMask {
    static final double MM_PER_PX = 0.2;

    /** The ratio to lit paper is kept in 8 bits, lit paper being this. */
    private static final double LIT = 110;

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

    private static final double SMALLEST_KNIFE_MM2 = 600;

    private final GroundRaster raster;
    private final Mat seen;

    private KnifeMask(GroundRaster raster, Mat seen) {
        this.raster = raster;
        this.seen = seen;
    }

    /**
     * @param contour of what hides the sheet, on the sheet's plane, closed and counter-clockwise, in mm
     * @param pattern what the bare sheet would show; its rasters are closed, its {@code printAt} is not
     * @param lineColour the colour of paper less that of its lines: blue, green, red
     */
    record Cover(Polyline contour, SheetPattern pattern, double[] lineColour) {}

    static Cover find(Picture picture, View view, ReferenceSheet sheet, PrintScale scale) {
        double halfWidth = sheet.pageWidthMm() / 2 * scale.x() - 1;
        double halfHeight = sheet.pageHeightMm() / 2 * scale.y() - 1;
        GroundRaster raster = GroundRaster.covering(
                new Point(-halfWidth, -halfHeight), new Point(halfWidth, halfHeight), MM_PER_PX);
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new Placement(0, new Point(0, 0)));
        SheetSights.Looked looked = new SheetSights(sheet, scale, raster, seen).look();
        try (SheetPattern pattern = SheetPattern.of(sheet, scale, raster)) {
            return new Cover(
                    new KnifeMask(raster, seen).contour(pattern, looked.sights()), pattern, looked.lineColour());
        } finally {
            seen.release();
        }
    }

    private Polyline contour(SheetPattern pattern, List<SheetSights.Sight> sights) {
        Mat ratio = ratio(pattern);
        Mat labels = seeds(ratio, pattern, sights);
        Imgproc.watershed(ratio, labels);
        Mat knife = new Mat();
        Core.compare(labels, new Scalar(KNIFE), knife, Core.CMP_EQ);
        ratio.release();
        labels.release();
        // A line's or a marker's edge that came out as a spur or a slit is thinner than any blade.
        Mat kernel = Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(9, 9));
        Imgproc.morphologyEx(knife, knife, Imgproc.MORPH_CLOSE, kernel);
        Imgproc.morphologyEx(knife, knife, Imgproc.MORPH_OPEN, kernel);
        kernel.release();
        return largest(knife);
    }

    private Polyline largest(Mat knife) {
        List<MatOfPoint> contours = new ArrayList<>();
        Mat hierarchy = new Mat();
        Imgproc.findContours(knife, contours, hierarchy, Imgproc.RETR_EXTERNAL, Imgproc.CHAIN_APPROX_NONE);
        hierarchy.release();
        knife.release();
        MatOfPoint largest = null;
        double largestArea = SMALLEST_KNIFE_MM2 / (MM_PER_PX * MM_PER_PX);
        for (MatOfPoint contour : contours) {
            double area = Imgproc.contourArea(contour);
            if (area > largestArea) {
                largestArea = area;
                largest = contour;
            }
        }
        if (largest == null) {
            throw new Trouble(
                    "No knife is to be seen on the sheet.",
                    "Lay the knife inside the frame, so that it stands out from the white paper.");
        }
        List<Point> places = new ArrayList<>();
        for (org.opencv.core.Point p : largest.toArray()) {
            places.add(raster.place(p.x, p.y));
        }
        Polyline contour = Polyline.closed(places);
        return contour.signedAreaMm2() > 0 ? contour : contour.reversed();
    }

    /** What is seen over what the bare lit sheet would show, {@link #LIT} where they agree; 8 bits, three channels. */
    private Mat ratio(SheetPattern pattern) {
        Mat light = PaperLight.over(seen, pattern.paper(), MM_PER_PX);
        Mat ratio = new Mat();
        Mat seenFloat = new Mat();
        seen.convertTo(seenFloat, CvType.CV_32F);
        Core.divide(seenFloat, light, ratio, LIT);
        seenFloat.release();
        light.release();
        Scalar blackness = median(ratio, pattern.black());
        Mat black = new Mat();
        Core.multiply(
                ratio,
                new Scalar(LIT / blackness.val[0], LIT / blackness.val[1], LIT / blackness.val[2]),
                black);
        black.copyTo(ratio, pattern.black());
        black.release();
        Mat known = new Mat();
        Core.bitwise_or(pattern.paper(), pattern.black(), known);
        fillGaps(ratio, known);
        known.release();
        Imgproc.GaussianBlur(ratio, ratio, new Size(0, 0), 1);
        Mat bytes = new Mat();
        ratio.convertTo(bytes, CvType.CV_8U);
        ratio.release();
        return bytes;
    }

    private static Scalar median(Mat ratio, Mat mask) {
        double[] median = new double[3];
        float[] row = new float[ratio.cols() * 3];
        byte[] use = new byte[ratio.cols()];
        int[][] histogram = new int[3][512];
        int count = 0;
        for (int y = 0; y < ratio.rows(); y += 2) {
            ratio.get(y, 0, row);
            mask.get(y, 0, use);
            for (int x = 0; x < use.length; x++) {
                if (use[x] != 0) {
                    count++;
                    for (int k = 0; k < 3; k++) {
                        histogram[k][(int) Math.max(0, Math.min(511, 2 * row[3 * x + k]))]++;
                    }
                }
            }
        }
        for (int k = 0; k < 3; k++) {
            int sum = 0;
            while (2 * sum < count) {
                sum += histogram[k][(int) median[k]++];
            }
        }
        return new Scalar(Math.max(1, median[0] / 2), Math.max(1, median[1] / 2), Math.max(1, median[2] / 2));
    }

    /** Replaces what is not known by the weighted mean of what is known nearby. */
    private static void fillGaps(Mat values, Mat known) {
        Mat weight = new Mat();
        known.convertTo(weight, CvType.CV_32F, 1 / 255.0);
        Mat three = new Mat();
        Core.merge(List.of(weight, weight, weight), three);
        Mat weighted = new Mat();
        Core.multiply(values, three, weighted);
        double sigma = 0.5 / MM_PER_PX;
        Imgproc.GaussianBlur(weighted, weighted, new Size(0, 0), sigma);
        Imgproc.GaussianBlur(three, three, new Size(0, 0), sigma);
        Core.add(three, Scalar.all(1e-6), three);
        Core.divide(weighted, three, weighted);
        Mat unknown = new Mat();
        Core.bitwise_not(known, unknown);
        weighted.copyTo(values, unknown);
        weight.release();
        three.release();
        weighted.release();
        unknown.release();
    }

    private Mat seeds(Mat ratio, SheetPattern pattern, List<SheetSights.Sight> sights) {
        Mat smooth = new Mat();
        Imgproc.GaussianBlur(ratio, smooth, new Size(0, 0), 1.5);
        int columns = smooth.cols();
        int rows = smooth.rows();
        byte[] bgr = new byte[3 * columns * rows];
        byte[] paper = new byte[columns * rows];
        byte[] black = new byte[columns * rows];
        smooth.get(0, 0, bgr);
        pattern.paper().get(0, 0, paper);
        pattern.black().get(0, 0, black);
        smooth.release();
        int[] seeds = new int[columns * rows];
        for (int i = 0; i < seeds.length; i++) {
            double b = (bgr[3 * i] & 255) / LIT;
            double g = (bgr[3 * i + 1] & 255) / LIT;
            double r = (bgr[3 * i + 2] & 255) / LIT;
            double mean = (b + g + r) / 3;
            if (paper[i] != 0) {
                double offPaper = Math.max(Math.abs(b - 1), Math.max(Math.abs(g - 1), Math.abs(r - 1)));
                double colour = Math.max(Math.abs(b / mean - 1), Math.max(Math.abs(g / mean - 1), Math.abs(r / mean - 1)));
                if (offPaper < PAPER_TOLERANCE) {
                    seeds[i] = GROUND;
                } else if (colour > COLOUR || mean < DARK) {
                    seeds[i] = KNIFE;
                }
            } else if (black[i] != 0 && mean > NOT_BLACK) {
                seeds[i] = KNIFE;
            }
        }
        Mat seedMat = new Mat(rows, columns, CvType.CV_32S);
        seedMat.put(0, 0, seeds);
        // A pixel of noise must not seed a region.
        for (int label : new int[] {GROUND, KNIFE}) {
            erode(seedMat, label, label == GROUND ? 2 : 3);
        }
        for (SheetSights.Sight sight : sights) {
            int label = sight.visible() ? GROUND : KNIFE;
            Point px = raster.pixel(sight.at());
            seedMat.put((int) Math.round(px.y()), (int) Math.round(px.x()), new int[] {label});
        }
        return seedMat;
    }

    private static void erode(Mat seeds, int label, int radius) {
        Mat mine = new Mat();
        Core.compare(seeds, new Scalar(label), mine, Core.CMP_EQ);
        Mat core = new Mat();
        Mat kernel = Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(2 * radius + 1, 2 * radius + 1));
        Imgproc.erode(mine, core, kernel);
        Core.subtract(mine, core, mine);
        seeds.setTo(new Scalar(0), mine);
        mine.release();
        core.release();
        kernel.release();
    }
}
