/**
 * Cutting mats and squared paper: the lattice of their lines in a picture.
 *
 * <p>In: A decoded photo and the pitch of the lines.
 *
 * <p>Out: Control points at the crossings.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code geometry.fit}, {@code ground}, {@code image}, {@code camera} and its
 * sub-packages; OpenCV and JTS.
 */
package weltwright.ground.ruled;
