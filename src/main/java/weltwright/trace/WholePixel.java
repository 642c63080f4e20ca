package weltwright.trace;

import java.util.List;
import org.opencv.core.MatOfPoint;
import weltwright.geometry.Point;

/** The pixel that a place of a picture lies in, which is all that OpenCV draws with. */
final class WholePixel {
    private WholePixel() {}

    /** @param p in pixels */
    static org.opencv.core.Point of(Point p) {
        return new org.opencv.core.Point(Math.round(p.x()), Math.round(p.y()));
    }

    /** @param points in pixels */
    static MatOfPoint all(List<Point> points) {
        return new MatOfPoint(points.stream().map(WholePixel::of).toArray(org.opencv.core.Point[]::new));
    }
}
