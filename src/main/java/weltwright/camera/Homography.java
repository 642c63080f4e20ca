package weltwright.camera;

import org.opencv.core.Mat;
import weltwright.geometry.Point;

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

    /** Maps a point. */
    public Point apply(Point p) {
        double w = h[6] * p.x() + h[7] * p.y() + h[8];
        return new Point((h[0] * p.x() + h[1] * p.y() + h[2]) / w, (h[3] * p.x() + h[4] * p.y() + h[5]) / w);
    }
}
