package weltwright.camera;

import java.util.List;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint2f;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvPoints;

/**
 * A projective map of a plane, such as that from the ground to the picture of a lens without distortion.
 *
 * @param h the 3 by 3 matrix, row by row
 */
public record Homography(double[] h) {
    /**
     * Copies OpenCV's matrix.
     *
     * @param matrix 3 by 3; is released
     */
    public static Homography of(Mat matrix) {
        double[] h = new double[9];
        matrix.get(0, 0, h);
        matrix.release();
        return new Homography(h);
    }

    /** Returns the map of four points, no three of them on a line, to four others. */
    public static Homography between(List<Point> from, List<Point> to) {
        MatOfPoint2f given = OpenCvPoints.exact(from);
        MatOfPoint2f wanted = OpenCvPoints.exact(to);
        Homography map = of(Imgproc.getPerspectiveTransform(given, wanted));
        given.release();
        wanted.release();
        return map;
    }

    /** Maps a point. */
    public Point apply(Point p) {
        double w = h[6] * p.x() + h[7] * p.y() + h[8];
        return new Point((h[0] * p.x() + h[1] * p.y() + h[2]) / w, (h[3] * p.x() + h[4] * p.y() + h[5]) / w);
    }
}
