package weltwright.hide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.message.Messages;

/**
 * Separates leather from what it lies on by colour, to a few pixels of a reduced photo: GrabCut (Rother, Kolmogorov and
 * Blake 2004), which models the colours of both and cuts where they change. Made for leather of few colours on a floor
 * or a ground of others. Of several parts it takes the largest.
 *
 * @param outline of the leather, closed, in pixels of the photo
 * @param holes in it, closed, in pixels of the photo
 * @param pxPerCell pixels of the photo to one of the reduced photo: about how far both may be off
 */
record LeatherSegmentation(Polyline outline, List<Polyline> holes, double pxPerCell) {
    private static final Messages TEXTS = Messages.of(LeatherSegmentation.class);

    /** Longer side of the reduced photo: GrabCut takes some seconds for it. Chosen by eye. */
    private static final int REDUCED_PX = 640;

    private static final int ITERATIONS = 5;

    /** Part of the photo's longer side along its border where there is no leather. Chosen by eye. */
    private static final double BARE_RIM = 0.015;

    /** Strands and gaps narrower than this many reduced pixels are noise. Chosen by eye. */
    private static final double NOISE_PX = 3;

    /** Least part of the photo that leather covers. Chosen by eye. */
    private static final double LEAST_PART = 0.01;

    /** Least area of a hole in reduced pixels. Chosen by eye. */
    private static final double LEAST_HOLE_PX = 12;

    /** A part that lies so far within the ground of known size is that ground. */
    private static final double IS_GROUND = 0.5;

    /**
     * Separates leather that may lie anywhere in the photo.
     *
     * @param known where the ground of known size is seen, in pixels
     * @throws UserFacingException where no leather is found, or it runs out of the photo
     */
    static LeatherSegmentation anywhere(DecodedPhoto photo, Polygon known) {
        double scale = scale(photo);
        Mat bgr = reduced(photo, scale);
        Mat mask = new Mat(bgr.size(), CvType.CV_8U, new Scalar(Imgproc.GC_BGD));
        int rim = (int) Math.ceil(BARE_RIM * Math.max(bgr.cols(), bgr.rows()));
        Mat within = mask.submat(new Rect(rim, rim, bgr.cols() - 2 * rim, bgr.rows() - 2 * rim));
        within.setTo(new Scalar(Imgproc.GC_PR_FGD));
        within.release();
        LeatherSegmentation found = cut(bgr, mask, scale, known).orElseThrow(LeatherSegmentation::noLeather);
        double reach = (rim + 1) / scale;
        if (found.outline.points().stream()
                .anyMatch(p -> Math.min(p.x(), p.y()) < reach
                        || p.x() > photo.widthPx() - 1 - reach
                        || p.y() > photo.heightPx() - 1 - reach)) {
            throw new UserFacingException(
                    TEXTS.text("leather-segmentation.the-leather-runs-out-of"),
                    TEXTS.text("leather-segmentation.photograph-it-again-from-farther"));
        }
        return found;
    }

    /** Separates the holes of leather whose outline is known, closed, in pixels. */
    static List<Polyline> holes(DecodedPhoto photo, Polyline outline) {
        double scale = scale(photo);
        Mat bgr = reduced(photo, scale);
        Mat mask = new Mat(bgr.size(), CvType.CV_8U, new Scalar(Imgproc.GC_BGD));
        Mat inside = Mat.zeros(bgr.size(), CvType.CV_8U);
        MatOfPoint corners = new MatOfPoint(outline.points().stream()
                .map(p -> new org.opencv.core.Point(toReduced(p.x(), scale), toReduced(p.y(), scale)))
                .toArray(org.opencv.core.Point[]::new));
        Imgproc.fillPoly(inside, List.of(corners), new Scalar(255));
        mask.setTo(new Scalar(Imgproc.GC_PR_FGD), inside);
        release(corners, inside);
        return cut(bgr, mask, scale, outline.polygon().getFactory().createPolygon())
                .map(LeatherSegmentation::holes)
                .orElse(List.of());
    }

    /** Pixels of a photo to one of it reduced. */
    static double pxPerCell(DecodedPhoto photo) {
        return 1 / scale(photo);
    }

    private static double scale(DecodedPhoto photo) {
        return Math.min(1, (double) REDUCED_PX / Math.max(photo.widthPx(), photo.heightPx()));
    }

    private static Mat reduced(DecodedPhoto photo, double scale) {
        return photo.reduced(new Size(Math.round(scale * photo.widthPx()), Math.round(scale * photo.heightPx())));
    }

    /** Pixel centres are whole numbers in both pictures. */
    private static double toReduced(double px, double scale) {
        return (px + 0.5) * scale - 0.5;
    }

    private static double toPhoto(double px, double scale) {
        return (px + 0.5) / scale - 0.5;
    }

    /** Releases both matrices. */
    private static Optional<LeatherSegmentation> cut(Mat bgr, Mat mask, double scale, Polygon known) {
        Mat background = new Mat();
        Mat foreground = new Mat();
        Core.setRNGSeed(1); // its clusters begin at random
        Imgproc.grabCut(bgr, mask, new Rect(), background, foreground, ITERATIONS, Imgproc.GC_INIT_WITH_MASK);
        Mat leather = new Mat();
        Core.inRange(mask, new Scalar(Imgproc.GC_PR_FGD), new Scalar(Imgproc.GC_PR_FGD), leather);
        Mat ellipse = Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(NOISE_PX, NOISE_PX));
        Imgproc.morphologyEx(leather, leather, Imgproc.MORPH_CLOSE, ellipse);
        Imgproc.morphologyEx(leather, leather, Imgproc.MORPH_OPEN, ellipse);
        double leastPx = LEAST_PART * bgr.total();
        List<MatOfPoint> contours = new ArrayList<>();
        Mat hierarchy = new Mat();
        Imgproc.findContours(leather, contours, hierarchy, Imgproc.RETR_CCOMP, Imgproc.CHAIN_APPROX_NONE);
        try {
            return largest(contours, hierarchy, leastPx, scale, known);
        } finally {
            contours.forEach(Mat::release);
            release(background, foreground, leather, ellipse, hierarchy, mask, bgr);
        }
    }

    private static Optional<LeatherSegmentation> largest(
            List<MatOfPoint> contours, Mat hierarchy, double leastPx, double scale, Polygon known) {
        List<Integer> parts = new ArrayList<>();
        for (int i = 0; i < contours.size(); i++) {
            if (hierarchy.get(0, i)[3] < 0
                    && Imgproc.contourArea(contours.get(i)) >= leastPx
                    && !isWithin(line(contours.get(i), scale), known)) {
                parts.add(i);
            }
        }
        return parts.stream()
                .max(Comparator.comparingDouble(i -> Imgproc.contourArea(contours.get(i))))
                .map(part -> {
                    List<Polyline> holes = new ArrayList<>();
                    for (int i = 0; i < contours.size(); i++) {
                        if (hierarchy.get(0, i)[3] == part && Imgproc.contourArea(contours.get(i)) >= LEAST_HOLE_PX) {
                            holes.add(line(contours.get(i), scale));
                        }
                    }
                    return new LeatherSegmentation(line(contours.get(part), scale), holes, 1 / scale);
                });
    }

    private static Polyline line(MatOfPoint contour, double scale) {
        List<Point> points = new ArrayList<>();
        for (org.opencv.core.Point p : contour.toArray()) {
            points.add(new Point(toPhoto(p.x, scale), toPhoto(p.y, scale)));
        }
        return Polyline.closed(points);
    }

    /** Whether most of a closed line's area lies within a polygon. */
    static boolean isWithin(Polyline line, Polygon polygon) {
        if (polygon.isEmpty() || line.points().size() < 3) {
            return false;
        }
        Geometry area = GeometryFixer.fix(line.polygon());
        return OverlayNGRobust.overlay(area, polygon, OverlayNG.INTERSECTION).getArea() > IS_GROUND * area.getArea();
    }

    private static void release(Mat... all) {
        for (Mat mat : all) {
            mat.release();
        }
    }

    private static UserFacingException noLeather() {
        return new UserFacingException(
                TEXTS.text("leather-segmentation.no-leather-stands-out-from"),
                TEXTS.text("leather-segmentation.photograph-it-on-a-ground"));
    }
}
