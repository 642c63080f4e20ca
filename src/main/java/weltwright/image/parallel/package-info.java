/**
 * Runs work on a picture on both processors of a small machine.
 *
 * <p>In: Tasks without shared state.
 *
 * <p>Out: Their results, the same in whatever order they ran.
 *
 * <p>Uses: No other package; OpenCV.
 */
package weltwright.image.parallel;
