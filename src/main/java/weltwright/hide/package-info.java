/**
 * From a photo of leather on or round a ground of known size to the leather's outline, with its holes.
 *
 * <p>In: A {@code Photo}, {@code TraceSettings} for its ground and lens, and {@code HideSettings}.
 *
 * <p>Out: {@code HideTrace}.
 *
 * <p>Uses: {@code camera}, {@code error}, {@code geometry}, {@code image}, {@code image.opencv}, {@code trace},
 * {@code trace.appearance}, {@code trace.capture}, {@code trace.edge} and {@code trace.ground}; JTS and OpenCV.
 */
package weltwright.hide;
