/**
 * What a trace asks of a ground, for each kind of ground.
 *
 * <p>In: A decoded photo and a choice of ground.
 *
 * <p>Out: {@code TraceableGround}: control points, print, visibility of the print.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code image}, {@code image.parallel}, {@code units}, {@code camera} and
 * its sub-packages, {@code ground} and its sub-packages, sub-packages of {@code trace}; OpenCV and JTS.
 */
package weltwright.trace.ground;
