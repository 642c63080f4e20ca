package weltwright.image.opencv;

import java.util.List;
import org.opencv.core.MatOfPoint;
import weltwright.geometry.Point;

/** The pixel that a place of a picture lies in, which is all that OpenCV draws with. */
public final class OpenCvPoints {
    private OpenCvPoints() {}

    /**
     * Rounds a point to a whole pixel.
     *
     * @param p in pixels
     */
    public static org.opencv.core.Point of(Point p) {
        return new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y()));
    }

    /**
     * Rounds points to whole pixels.
     *
     * @param points in pixels
     */
    public static MatOfPoint all(List<Point> points) {
        return new MatOfPoint(points.stream().map(OpenCvPoints::of).toArray(org.opencv.core.Point[]::new));
    }
}
