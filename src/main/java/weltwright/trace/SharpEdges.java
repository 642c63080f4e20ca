package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfInt;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;

/**
 * Where a picture of a thing on plain paper changes sharply, and what is inside and outside of that for sure. A soft
 * shadow fades and leaves no trace here; a hard one does. Where steel is as bright as the paper its edge may be missing
 * for a stretch: what is inside is judged from the whole, not from a closed line.
 *
 * @param inside 255 well inside the convex hull of the sharp edges and away from all of them; 0 elsewhere
 * @param outside 255 well outside that hull
 */
record SharpEdges(Mat inside, Mat outside) implements AutoCloseable {
    /** Changes by more than this over half a millimetre, of the {@link KnifeMask}'s 110 of lit paper, are sharp. */
    private static final double SHARP = 5;

    /** Smaller specks are grain. */
    private static final double SPECK_MM2 = 4;

    /** Sharp edges farther than this from the largest belong to something else. */
    private static final double APART_MM = 30;

    /** Knives bend inwards between the ends of their hull; seldom so far that a place so far in is outside. */
    private static final double INSIDE_MM = 4;

    private static final double FROM_EDGE_MM = 3;
    private static final double OUTSIDE_MM = 2;

    /** @param ratio to the bare ground, 8 bits, three channels */
    static SharpEdges of(Mat ratio, double mmPerPx) {
        Mat sharp = sharp(ratio);
        List<MatOfPoint> parts = parts(sharp, mmPerPx);
        if (parts.isEmpty()) {
            throw KnifeMask.noKnife();
        }
        Mat edges = new Mat(ratio.size(), CvType.CV_8U, new Scalar(0));
        Imgproc.drawContours(edges, parts, -1, new Scalar(255), Imgproc.FILLED);
        Core.bitwise_and(edges, sharp, edges);
        Mat hull = hull(parts, ratio.size());
        Mat inside = new Mat();
        Mat outside = new Mat();
        Imgproc.erode(hull, inside, disc(INSIDE_MM / mmPerPx));
        Imgproc.dilate(hull, outside, disc(OUTSIDE_MM / mmPerPx));
        Core.bitwise_not(outside, outside);
        Mat near = new Mat();
        Imgproc.dilate(edges, near, disc(FROM_EDGE_MM / mmPerPx));
        inside.setTo(new Scalar(0), near);
        for (Mat used : List.of(sharp, edges, hull, near)) {
            used.release();
        }
        return new SharpEdges(inside, outside);
    }

    /** 255 where any channel changes sharply. */
    private static Mat sharp(Mat ratio) {
        Mat smooth = new Mat();
        Imgproc.GaussianBlur(ratio, smooth, new Size(0, 0), 1.2);
        Mat slope = new Mat();
        Imgproc.morphologyEx(
                smooth, slope, Imgproc.MORPH_GRADIENT, Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(3, 3)));
        List<Mat> channels = new ArrayList<>();
        Core.split(slope, channels);
        Mat most = channels.get(0);
        Core.max(most, channels.get(1), most);
        Core.max(most, channels.get(2), most);
        Mat sharp = new Mat();
        Core.compare(most, new Scalar(SHARP), sharp, Core.CMP_GT);
        smooth.release();
        slope.release();
        channels.forEach(Mat::release);
        return sharp;
    }

    /** The outlines of the sharp parts: the largest, and those that hang together with it over small gaps. */
    private static List<MatOfPoint> parts(Mat sharp, double mmPerPx) {
        List<MatOfPoint> all = new ArrayList<>();
        Imgproc.findContours(sharp, all, new Mat(), Imgproc.RETR_EXTERNAL, Imgproc.CHAIN_APPROX_NONE);
        all.removeIf(part -> part.rows() * mmPerPx * mmPerPx < SPECK_MM2);
        List<MatOfPoint> together = new ArrayList<>();
        all.stream().max((a, b) -> Integer.compare(a.rows(), b.rows())).ifPresent(together::add);
        all.removeAll(together);
        boolean grown = !together.isEmpty();
        while (grown) {
            grown = false;
            for (MatOfPoint part : List.copyOf(all)) {
                if (together.stream().anyMatch(mine -> apart(mine, part) * mmPerPx < APART_MM)) {
                    together.add(part);
                    all.remove(part);
                    grown = true;
                }
            }
        }
        return together;
    }

    /** How far apart two parts' bounding boxes are, in pixels. */
    private static double apart(MatOfPoint a, MatOfPoint b) {
        var ra = Imgproc.boundingRect(a);
        var rb = Imgproc.boundingRect(b);
        double dx = Math.max(0, Math.max(ra.x - rb.x - rb.width, rb.x - ra.x - ra.width));
        double dy = Math.max(0, Math.max(ra.y - rb.y - rb.height, rb.y - ra.y - ra.height));
        return Math.hypot(dx, dy);
    }

    private static Mat hull(List<MatOfPoint> parts, Size size) {
        List<org.opencv.core.Point> points = new ArrayList<>();
        parts.forEach(part -> points.addAll(part.toList()));
        MatOfPoint all = new MatOfPoint(points.toArray(org.opencv.core.Point[]::new));
        MatOfInt indices = new MatOfInt();
        Imgproc.convexHull(all, indices);
        MatOfPoint corners = new MatOfPoint(
                indices.toList().stream().map(points::get).toArray(org.opencv.core.Point[]::new));
        Mat hull = new Mat(size, CvType.CV_8U, new Scalar(0));
        Imgproc.fillConvexPoly(hull, corners, new Scalar(255));
        return hull;
    }

    private static Mat disc(double radiusPx) {
        int r = (int) Math.ceil(radiusPx);
        return Imgproc.getStructuringElement(Imgproc.MORPH_ELLIPSE, new Size(2 * r + 1, 2 * r + 1));
    }

    @Override
    public void close() {
        inside.release();
        outside.release();
    }
}
