/**
 * What can be said of a photo before it is traced: settings, lens, view, sharpness, light, advice.
 *
 * <p>In: A photo, its ground and the user's settings.
 *
 * <p>Out: A solved view and advice for a better photo.
 *
 * <p>Uses: {@code geometry}, {@code geometry.fit}, {@code ground}, {@code image}, {@code knife}, {@code trace.ground},
 * {@code trace.report}, {@code units}, {@code camera} and its sub-packages.
 */
package weltwright.trace.capture;
