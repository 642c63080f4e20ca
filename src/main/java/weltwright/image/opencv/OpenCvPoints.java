package weltwright.image.opencv;

import java.util.List;
import org.opencv.core.MatOfPoint;
import org.opencv.core.MatOfPoint2f;
import weltwright.geometry.Point;

/** Converts points to OpenCV's types. */
public final class OpenCvPoints {
    private OpenCvPoints() {}

    /** Rounds a point, in pixels, to the nearest pixel, for drawing. */
    public static org.opencv.core.Point rounded(Point p) {
        return new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y()));
    }

    /** Rounds points, in pixels, to the nearest pixels, for drawing. */
    public static MatOfPoint rounded(List<Point> points) {
        return new MatOfPoint(points.stream().map(OpenCvPoints::rounded).toArray(org.opencv.core.Point[]::new));
    }

    /** Converts points without rounding, but to single precision. */
    public static MatOfPoint2f exact(List<Point> points) {
        return new MatOfPoint2f(points.stream()
                .map(p -> new org.opencv.core.Point(p.x(), p.y()))
                .toArray(org.opencv.core.Point[]::new));
    }
}
