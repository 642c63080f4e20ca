package weltwright.camera;

import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;

/**
 * A camera and its pose over the ground. The ground frame is the ground seen from above, in mm: x to the right, y up
 * the page, z towards the camera, with the origin at the page's centre.
 *
 * @param camera focal length, centre and distortion
 * @param rotation from the ground frame to the camera frame (x right, y down, z away from the camera)
 * @param translation the ground's origin in the camera frame, in mm
 */
public record CameraView(PinholeCamera camera, Rotation rotation, Vector3 translation) {

    /**
     * Makes a view from a rotation vector.
     *
     * @param rotation rotation vector (Rodrigues), in radians
     */
    public CameraView(PinholeCamera camera, Vector3 rotation, Vector3 translation) {
        this(camera, Rotation.about(rotation), translation);
    }

    /** Returns the rotation as a vector (Rodrigues), in radians. */
    public Vector3 rodrigues() {
        return rotation.rodrigues();
    }

    /** Returns the view for a picture of half the resolution, as {@link DecodedPhoto#half()} gives it. */
    public CameraView halved() {
        return new CameraView(camera.halved(), rotation, translation);
    }

    /** Projects a point of the ground frame; returns its pixel. */
    public Point pixel(Vector3 at) {
        return camera.pixel(rotation.apply(at).plus(translation));
    }

    /** Returns the camera's centre of projection in the ground frame, in mm. */
    public Vector3 eye() {
        return rotation.applyInverse(translation.times(-1));
    }

    /** Intersects the ray of a pixel with a plane; returns x and y in the ground frame, in mm. */
    public Point intersection(Point pixel, Plane plane) {
        Vector3 ray = rotation.applyInverse(camera.direction(pixel));
        return plane.intersection(eye(), ray);
    }

    /**
     * Returns the parallax per height at a point: the displacement of the line of sight in x and y for each mm of z. A
     * point that is dz higher is seen as if it lay dz times this vector nearer to the foot of the camera.
     */
    public Point parallax(Vector3 at) {
        Vector3 up = eye().minus(at);
        return new Point(up.x() / up.z(), up.y() / up.z());
    }

    /**
     * Returns the parallax per height above a plane, measured square to it: a point that lies h above a place of the
     * plane is seen, for small h, as if it lay in the plane h times this vector nearer to the foot of the camera.
     *
     * @param at place of the plane, x and y in the ground frame
     */
    public Point parallax(Plane plane, Point at) {
        return parallax(plane.pointAbove(at)).plus(plane.slope());
    }

    /** Returns the scale of the picture at the ground's origin along x. */
    public double pxPerMm() {
        return pixel(Plane.GROUND.pointAbove(new Point(0, 0)))
                .distance(pixel(Plane.GROUND.pointAbove(new Point(1, 0))));
    }

    /** Returns the length on the ground that a pixel covers along a row, where the ground's origin is seen. */
    public double mmPerPx() {
        Point seen = pixel(Plane.GROUND.pointAbove(new Point(0, 0)));
        return intersection(seen, Plane.GROUND).distance(intersection(seen.plus(new Point(1, 0)), Plane.GROUND));
    }

    /** Returns the angle between the optical axis and the vertical; 0 where the camera looks straight down. */
    public double tiltDegrees() {
        return Math.toDegrees(
                Math.acos(-new Vector3(0, 0, 1).rotated(rodrigues().times(-1)).z()));
    }

    /** Returns the angle between the vertical and the line of sight to the ground's origin. */
    public double obliquityDegrees() {
        return Math.toDegrees(Math.atan(parallax(new Vector3(0, 0, 0)).norm()));
    }
}
