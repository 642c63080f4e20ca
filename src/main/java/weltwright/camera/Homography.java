package weltwright.camera;

import org.opencv.core.Mat;
import weltwright.geometry.Point;

/**
 * Where a plane's points are seen, or a picture's lie, as long as no lens bends anything.
 *
 * @param h its matrix, row by row
 */
public record Homography(double[] h) {
    /**
     * Makes a homography of a matrix of OpenCV.
     *
     * @param matrix 3 by 3, released
     */
    public static Homography of(Mat matrix) {
        double[] h = new double[9];
        matrix.get(0, 0, h);
        matrix.release();
        return new Homography(h);
    }

    public Point apply(Point p) {
        double w = h[6] * p.x() + h[7] * p.y() + h[8];
        return new Point((h[0] * p.x() + h[1] * p.y() + h[2]) / w, (h[3] * p.x() + h[4] * p.y() + h[5]) / w);
    }
}
