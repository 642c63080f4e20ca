package weltwright.camera;

import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;

/**
 * A camera over the ground: where each point of space is seen, and from where each pixel is looked at. The ground frame
 * is the ground seen from above: x to the right, y up the page, z towards the camera, the origin at the page's centre,
 * in mm.
 *
 * @param camera the lens
 * @param turn from the ground frame to the camera's (x right, y down, z away from the camera)
 * @param translation the ground's origin in the camera's frame, in mm
 */
public record CameraView(PinholeCamera camera, Rotation rotation, Vector3 translation) {

    /** @param rotation the turn as a Rodrigues vector, in radians */
    public CameraView(PinholeCamera camera, Vector3 rotation, Vector3 translation) {
        this(camera, Rotation.about(rotation), translation);
    }

    /** The turn as a Rodrigues vector, in radians. */
    public Vector3 rodrigues() {
        return rotation.rodrigues();
    }

    /** The same view, of {@link DecodedPhoto#half()}. */
    public CameraView halved() {
        return new CameraView(camera.halved(), rotation, translation);
    }

    /** The pixel at which a point of the ground frame is seen. */
    public Point pixel(Vector3 at) {
        return camera.pixel(rotation.apply(at).plus(translation));
    }

    /** Where the camera's centre of projection is, in the ground frame. */
    public Vector3 eye() {
        return rotation.applyInverse(translation.times(-1));
    }

    /** Where the ray of a pixel meets a plane, in the ground frame: x and y there. */
    public Point intersection(Point pixel, Plane plane) {
        Vector3 ray = rotation.applyInverse(camera.direction(pixel));
        return plane.intersection(eye(), ray);
    }

    /**
     * The slope at which a point is looked at: how far the line of sight leans over in x and y for each mm of height,
     * so a thing higher by dz is seen as if at the point less dz times this.
     */
    public Point parallax(Vector3 at) {
        Vector3 up = eye().minus(at);
        return new Point(up.x() / up.z(), up.y() / up.z());
    }

    /** Pixels to the millimetre, at the ground's origin along x. */
    public double pxPerMm() {
        return pixel(Plane.GROUND.pointAbove(new Point(0, 0)))
                .distance(pixel(Plane.GROUND.pointAbove(new Point(1, 0))));
    }

    /** Millimetres of the ground to the pixel, where the ground's origin is seen, along a row. */
    public double mmPerPx() {
        Point seen = pixel(Plane.GROUND.pointAbove(new Point(0, 0)));
        return intersection(seen, Plane.GROUND).distance(intersection(seen.plus(new Point(1, 0)), Plane.GROUND));
    }

    /** The angle between the camera's axis and the vertical, in degrees; 0 where it looks straight down. */
    public double tiltDegrees() {
        return Math.toDegrees(
                Math.acos(-new Vector3(0, 0, 1).rotated(rodrigues().times(-1)).z()));
    }

    /** The angle between the vertical and the line of sight to the ground's origin, in degrees. */
    public double obliquityDegrees() {
        return Math.toDegrees(Math.atan(parallax(new Vector3(0, 0, 0)).norm()));
    }
}
