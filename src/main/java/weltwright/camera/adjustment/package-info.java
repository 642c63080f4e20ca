/**
 * Bundle adjustment: lens, print scale and poses at once by Levenberg-Marquardt with robust weights.
 *
 * <p>In: Control points in pixels and mm, and a lens prior.
 *
 * <p>Out: A solved view with covariances.
 *
 * <p>Uses: {@code camera}, {@code camera.lens}, {@code geometry} and {@code geometry.fit}; OpenCV.
 */
package weltwright.camera.adjustment;
