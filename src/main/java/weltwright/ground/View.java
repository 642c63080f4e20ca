package weltwright.ground;

/**
 * A camera over the sheet: where each point of space is seen, and from where each pixel is looked at. The sheet frame is
 * that of the sheet seen from above: x to the right, y up the page, z towards the camera, the origin at the page's
 * centre, in mm.
 *
 * @param camera the lens
 * @param rotation the rotation from the sheet frame to the camera's (x right, y down, z away from the camera) as a
 *     Rodrigues vector, in radians: three numbers
 * @param translation the sheet's origin in the camera's frame, in mm: three numbers
 */
public record View(Camera camera, Vector3 rotation, Vector3 translation) {}
