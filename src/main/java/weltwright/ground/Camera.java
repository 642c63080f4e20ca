package weltwright.ground;

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
public record Camera(double focalPx, double centreXPx, double centreYPx, double k1, double k2) {}
