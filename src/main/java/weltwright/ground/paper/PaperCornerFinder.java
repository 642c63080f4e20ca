package weltwright.ground.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.InterpolatedChannel;

/**
 * Finds the four corners of a sheet of white paper in a picture, to a few pixels.
 *
 * <p>The steps, on a reduced picture:
 *
 * <ol>
 *   <li>compute whiteness, the least of blue, green and red, in which white paper differs from wood and other colours;
 *   <li>at several thresholds, approximate the contours of whiter regions by straight segments;
 *   <li>form all convex quadrilaterals of four of a contour's longest segments. A knife that hides part of an edge or
 *       extends over it adds segments but removes none of the four;
 *   <li>take the quadrilateral whose sides most constantly separate whiter from less white.
 * </ol>
 */
final class PaperCornerFinder {
    /** Longer side of the reduced picture. Chosen by eye. */
    private static final int REDUCED_LONG_SIDE_PX = 800;

    /** Number of thresholds, evenly spaced over the picture's range of whiteness. Chosen by eye. */
    private static final int LEVELS = 9;

    /** Number of a contour's longest segments that are combined. Chosen by eye. */
    private static final int SEGMENTS = 8;

    /** Least part of the picture that the sheet covers. Chosen by eye. */
    private static final double LEAST_PART = 0.06;

    /**
     * Distance from a side at which inside and outside are compared, in pixels of the reduced picture. Chosen by eye.
     */
    private static final double ASIDE_PX = 3;

    /** Least difference in grey levels between paper and table. Chosen by eye. */
    private static final double LEAST_STEP = 6;

    /** Least part of each side, and of all sides together, that must separate paper from table. Chosen by eye. */
    private static final double LEAST_SEEN_OF_SIDE = 0.4;

    private static final double LEAST_SEEN = 0.65;

    private final InterpolatedChannel levels;

    private PaperCornerFinder(InterpolatedChannel levels) {
        this.levels = levels;
    }

    private record Quad(List<Point> corners, double score) {}

    private record Segment(Point from, Point to) {
        double lengthPx() {
            return from.distance(to);
        }
    }

    /**
     * Finds the corners.
     *
     * @return pixels of the full picture, anticlockwise as seen; empty where there is no such sheet
     */
    static Optional<List<Point>> find(DecodedPhoto picture) {
        int longSidePx = Math.max(picture.widthPx(), picture.heightPx());
        double reduction = Math.min(1, (double) REDUCED_LONG_SIDE_PX / longSidePx);
        Mat white = whiteness(picture, reduction);
        PaperCornerFinder contour = new PaperCornerFinder(new InterpolatedChannel(white));
        Optional<Quad> best = contour.quads(white).stream().max(Comparator.comparingDouble(Quad::score));
        white.release();
        return best.map(quad -> quad.corners().stream()
                .map(p -> p.plus(new Point(0.5, 0.5)).times(1 / reduction).minus(new Point(0.5, 0.5)))
                .toList());
    }

    private static Mat whiteness(DecodedPhoto picture, double reduction) {
        Mat reduced = picture.reduced(
                new Size(Math.round(reduction * picture.widthPx()), Math.round(reduction * picture.heightPx())));
        List<Mat> channels = new ArrayList<>();
        Core.split(reduced, channels);
        Mat white = new Mat();
        Core.min(channels.get(0), channels.get(1), white);
        Core.min(white, channels.get(2), white);
        channels.forEach(Mat::release);
        reduced.release();
        Imgproc.medianBlur(white, white, 3);
        return white;
    }

    private List<Quad> quads(Mat white) {
        Core.MinMaxLocResult range = Core.minMaxLoc(white);
        List<Quad> quads = new ArrayList<>();
        for (int k = 1; k <= LEVELS; k++) {
            double level = range.minVal + (range.maxVal - range.minVal) * k / (LEVELS + 1);
            // A black border closes the contours of regions that extend beyond the picture.
            Mat whiter = Mat.zeros(white.rows() + 2, white.cols() + 2, CvType.CV_8U);
            Mat inner = whiter.submat(1, white.rows() + 1, 1, white.cols() + 1);
            Core.compare(white, new Scalar(level), inner, Core.CMP_GT);
            List<MatOfPoint> contours = new ArrayList<>();
            Mat hierarchy = new Mat();
            Imgproc.findContours(
                    whiter,
                    contours,
                    hierarchy,
                    Imgproc.RETR_EXTERNAL,
                    Imgproc.CHAIN_APPROX_NONE,
                    new org.opencv.core.Point(-1, -1));
            for (MatOfPoint contour : contours) {
                if (Imgproc.contourArea(contour) > LEAST_PART * white.total()) {
                    quads.addAll(quads(segments(contour)));
                }
                contour.release();
            }
            for (Mat used : List.of(hierarchy, inner, whiter)) {
                used.release();
            }
        }
        return quads;
    }

    /** Returns the longest straight segments of a contour in its order, without those along the picture's border. */
    private List<Segment> segments(MatOfPoint contour) {
        MatOfPoint2f chain = new MatOfPoint2f(contour.toArray());
        MatOfPoint2f corners = new MatOfPoint2f();
        Imgproc.approxPolyDP(chain, corners, 0.004 * Imgproc.arcLength(chain, true), true);
        org.opencv.core.Point[] c = corners.toArray();
        chain.release();
        corners.release();
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i < c.length; i++) {
            org.opencv.core.Point next = c[(i + 1) % c.length];
            Segment segment = new Segment(new Point(c[i].x, c[i].y), new Point(next.x, next.y));
            Point middle = segment.from().towards(segment.to(), 0.5);
            if (levels.contains(middle, 2)) {
                segments.add(segment);
            }
        }
        List<Segment> longest = segments.stream()
                .sorted(Comparator.comparingDouble(Segment::lengthPx).reversed())
                .limit(SEGMENTS)
                .toList();
        return segments.stream().filter(longest::contains).toList();
    }

    private List<Quad> quads(List<Segment> s) {
        List<Quad> quads = new ArrayList<>();
        for (int a = 0; a < s.size(); a++) {
            for (int b = a + 1; b < s.size(); b++) {
                for (int c = b + 1; c < s.size(); c++) {
                    for (int d = c + 1; d < s.size(); d++) {
                        quad(List.of(s.get(a), s.get(b), s.get(c), s.get(d))).ifPresent(quads::add);
                    }
                }
            }
        }
        return quads;
    }

    private Optional<Quad> quad(List<Segment> sides) {
        List<Point> corners = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            Segment a = sides.get(k);
            Segment b = sides.get((k + 1) % 4);
            Point direction = a.to().minus(a.from());
            Point other = b.to().minus(b.from());
            // The sides are nearly parallel, or the corner is concave.
            if (direction.unit().cross(other.unit()) > -0.4) {
                return Optional.empty();
            }
            corners.add(a.from().plus(direction.times(b.from().minus(a.from()).cross(other) / direction.cross(other))));
        }
        double area = area(corners);
        if (area < LEAST_PART * levels.columns() * levels.rows()) {
            return Optional.empty();
        }
        double seen = 0;
        for (int k = 0; k < 4; k++) {
            double part = visiblePart(corners.get(k), corners.get((k + 1) % 4));
            if (part < LEAST_SEEN_OF_SIDE) {
                return Optional.empty();
            }
            seen += part / 4;
        }
        // Prefers the larger of two equally visible ones, such as the sheet and a frame printed on it.
        return seen < LEAST_SEEN ? Optional.empty() : Optional.of(new Quad(corners, seen * Math.pow(area, 0.1)));
    }

    /** Returns the area, positive for corners that are anticlockwise as seen. */
    private static double area(List<Point> corners) {
        double twice = 0;
        for (int k = 0; k < 4; k++) {
            twice -= corners.get(k).cross(corners.get((k + 1) % 4));
        }
        return twice / 2;
    }

    /**
     * Returns the part of a side, as far as it lies in the picture, along which the inner side is whiter than the
     * outer.
     */
    private double visiblePart(Point from, Point to) {
        Point inward = to.minus(from).unit().left().times(-ASIDE_PX);
        int places = 60;
        int inside = 0;
        int steps = 0;
        for (int k = 0; k < places; k++) {
            Point at = from.towards(to, (k + 0.5) / places);
            if (levels.contains(at, ASIDE_PX)) {
                inside++;
                Point paper = at.plus(inward);
                Point table = at.minus(inward);
                double step = levels.at(paper.x(), paper.y()) - levels.at(table.x(), table.y());
                steps += step > LEAST_STEP ? 1 : 0;
            }
        }
        return inside < places / 2 ? 0 : (double) steps / inside;
    }
}
