/**
 * A rectangle of known size whose corners the user set.
 *
 * <p>In: Four pixels and two lengths.
 *
 * <p>Out: Control points, moved to straight edges where the photo shows them.
 *
 * <p>Uses: {@code geometry}, {@code geometry.fit}, {@code ground}, {@code image}, {@code camera} and its sub-packages;
 * OpenCV.
 */
package weltwright.ground.rectangle;
