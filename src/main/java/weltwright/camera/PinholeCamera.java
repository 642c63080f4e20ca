package weltwright.camera;

import weltwright.geometry.Point;

/**
 * A pinhole camera with square pixels and two terms of radial distortion, as in OpenCV's model: a ray that meets the
 * plane at distance 1 in (x, y) is seen at f·(1 + k1·r² + k2·r⁴)·(x, y) + (cx, cy), with r² = x² + y².
 *
 * @param focalPx f, in pixels
 * @param centreXPx cx, in pixels, the centre of the upper left pixel being (0, 0)
 * @param centreYPx cy, the same downwards
 * @param k1 first radial term
 * @param k2 second radial term
 */
public record PinholeCamera(double focalPx, double centreXPx, double centreYPx, double k1, double k2) {

    /** The same camera, of a picture with a pixel for four. */
    PinholeCamera halved() {
        return new PinholeCamera(focalPx / 2, centreXPx / 2 - 0.25, centreYPx / 2 - 0.25, k1, k2);
    }

    /** The pixel at which a direction of the camera's frame is seen; its z must be positive. */
    public Point pixel(Vector3 direction) {
        double x = direction.x() / direction.z();
        double y = direction.y() / direction.z();
        double r2 = x * x + y * y;
        double stretch = focalPx * (1 + r2 * (k1 + r2 * k2));
        return new Point(stretch * x + centreXPx, stretch * y + centreYPx);
    }

    /**
     * The direction that is seen at a pixel, with z = 1. The distortion is undone by Newton's method on the radius,
     * which converges in a few steps wherever the distortion is monotonic, as it is inside any real picture.
     */
    Vector3 direction(Point pixel) {
        double u = (pixel.x() - centreXPx) / focalPx;
        double v = (pixel.y() - centreYPx) / focalPx;
        double seen = Math.sqrt(u * u + v * v);
        if (seen == 0) {
            return new Vector3(0, 0, 1);
        }
        double r = seen;
        for (int i = 0; i < 8; i++) {
            double r2 = r * r;
            r -= (r * (1 + r2 * (k1 + r2 * k2)) - seen) / (1 + r2 * (3 * k1 + 5 * r2 * k2));
        }
        return new Vector3(u * r / seen, v * r / seen, 1);
    }
}
