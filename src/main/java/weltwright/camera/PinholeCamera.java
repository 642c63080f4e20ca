package weltwright.camera;

import weltwright.geometry.Point;

/**
 * A pinhole camera with square pixels and two terms of radial distortion, as in OpenCV's model: a ray through (x, y, 1)
 * is distorted at f·(1 + k1·r² + k2·r⁴)·(x, y) + (cx, cy), where r² = x² + y².
 *
 * @param focalPx f, in pixels
 * @param centreXPx cx, in pixels from the centre of the upper left pixel to the right
 * @param centreYPx cy, in pixels downwards
 * @param k1 first radial term
 * @param k2 second radial term
 */
public record PinholeCamera(double focalPx, double centreXPx, double centreYPx, double k1, double k2) {

    /** Returns the camera for a picture of half the resolution. */
    PinholeCamera halved() {
        return new PinholeCamera(focalPx / 2, centreXPx / 2 - 0.25, centreYPx / 2 - 0.25, k1, k2);
    }

    /** Projects a direction of the camera frame, whose z must be positive. */
    public Point pixel(Vector3 direction) {
        double x = direction.x() / direction.z();
        double y = direction.y() / direction.z();
        double r2 = x * x + y * y;
        double scale = focalPx * (1 + r2 * (k1 + r2 * k2));
        return new Point(scale * x + centreXPx, scale * y + centreYPx);
    }

    /**
     * Returns the direction of a pixel's ray in the camera frame, with z = 1. Inverts the distortion by eight steps of
     * Newton's method on the radius, which converges where the distortion increases with the radius, as it does inside
     * real pictures.
     */
    Vector3 direction(Point pixel) {
        double u = (pixel.x() - centreXPx) / focalPx;
        double v = (pixel.y() - centreYPx) / focalPx;
        double distorted = Math.sqrt(u * u + v * v);
        if (distorted == 0) {
            return new Vector3(0, 0, 1);
        }
        double r = distorted;
        for (int i = 0; i < 8; i++) {
            double r2 = r * r;
            r -= (r * (1 + r2 * (k1 + r2 * k2)) - distorted) / (1 + r2 * (3 * k1 + 5 * r2 * k2));
        }
        return new Vector3(u * r / distorted, v * r / distorted, 1);
    }
}
