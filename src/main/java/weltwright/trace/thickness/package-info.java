/**
 * Measures the thickness of a knife from a second photo, on which it stands upright.
 *
 * <p>In: A photo of the standing knife.
 *
 * <p>Out: Thicknesses along the knife.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code geometry.fit}, {@code image}, {@code knife}, {@code units},
 * {@code camera} and its sub-packages, {@code trace} and its sub-packages; OpenCV.
 */
package weltwright.trace.thickness;
