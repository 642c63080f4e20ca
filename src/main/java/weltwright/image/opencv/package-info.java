/**
 * Loads OpenCV and converts between its types and ours.
 *
 * <p>In: The natives in the program's jars.
 *
 * <p>Out: A loaded library.
 *
 * <p>Uses: {@code error}, {@code geometry} and {@code io}; OpenCV.
 */
package weltwright.image.opencv;
