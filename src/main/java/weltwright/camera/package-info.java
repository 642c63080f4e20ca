/**
 * Pinhole camera with radial distortion, its pose over a plane, and what follows: rays, homographies, rotations.
 *
 * <p>In: Pixels, or points in the ground frame (mm, z to the camera).
 *
 * <p>Out: The other of both.
 *
 * <p>Uses: {@code geometry}; OpenCV and JTS.
 */
package weltwright.camera;
