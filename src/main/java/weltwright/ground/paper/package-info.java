/**
 * Blank sheets of paper: their four edges in a picture.
 *
 * <p>In: A decoded photo and the size of the paper, if known.
 *
 * <p>Out: Control points along the edges.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code ground}, {@code ground.rectangle}, {@code image}, {@code camera} and
 * its sub-packages; OpenCV.
 */
package weltwright.ground.paper;
