/**
 * The printed reference sheet: its layout, its markers and corners in a picture, and lens calibration from photos of
 * it.
 *
 * <p>In: A decoded photo.
 *
 * <p>Out: Control points of the sheet.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code ground}, {@code units}, {@code camera} and its sub-packages,
 * {@code image} and its sub-packages; OpenCV.
 */
package weltwright.ground.sheet;
