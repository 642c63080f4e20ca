package weltwright.ground.rectangle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.camera.ControlPoint;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.Point;
import weltwright.ground.LocatedGround;
import weltwright.image.DecodedPhoto;
import weltwright.image.InterpolatedChannel;

/**
 * A rectangle whose corners were set by hand, made as sure as the picture allows.
 *
 * <p>Between two corners runs an edge. Where all four can be followed, and a view of a rectangle of such a size
 * explains them, they count and the corners do not: hundreds of places to a fraction of a pixel each, against four to a
 * few. Where they cannot, because the rectangle is of marks or the edges are worn or hidden, the four corners are all
 * there is.
 */
public final class RectangleFinder {
    /**
     * How well a hand sets a corner, in pixels, as the standard deviation of one coordinate: the pointing, and that
     * real corners are worn round. Common practice.
     */
    public static final double CORNER_SIGMA_PX = 2;

    /** A side is measured with a ruler to about so much. Common practice. */
    private static final double SIDE_SIGMA_MM = 0.4;

    /** Of the points on the edges so many must agree with a rectangle of the size that was told. */
    private static final double LEAST_FITTING = 0.85;

    private RectangleFinder() {}

    /**
     * The rectangle. Its frame has x from its first corner to its second, or the other way where that is needed to have
     * y upwards as seen from above; its origin is in its middle.
     *
     * @param references the four corners, or points of all four edges
     * @param byEdges which of the two
     * @param sizeXMm its length along x
     * @param sizeYMm along y
     */
    public record Found(List<ControlPoint> references, boolean byEdges, double sizeXMm, double sizeYMm) {
        /** The rectangle as a ground to solve the view from. */
        public LocatedGround located() {
            return new LocatedGround(
                    references,
                    byEdges ? ViewSolver.LEAST_PIXEL_SIGMA : CORNER_SIGMA_PX,
                    Math.hypot(SIDE_SIGMA_MM / sizeXMm, SIDE_SIGMA_MM / sizeYMm),
                    SIDE_SIGMA_MM / Math.min(sizeXMm, sizeYMm),
                    RectangleEdges.observation(references),
                    RectangleEdges.groundLines(sizeXMm, sizeYMm));
        }
    }

    /**
     * The rectangle that was told, by the straight edges between its corners where there are such.
     *
     * @param told its corners in the order of a walk round it, in pixels
     * @param widthMm from the first corner to the second
     * @param heightMm from the second to the third
     */
    public static Found find(DecodedPhoto picture, List<Point> told, double widthMm, double heightMm) {
        List<Point> corners = anticlockwise(told);
        Found byCorners = new Found(
                IntStream.range(0, 4)
                        .mapToObj(k -> new ControlPoint(
                                RectangleEdges.corners(widthMm, heightMm).get(k), corners.get(k)))
                        .toList(),
                false,
                widthMm,
                heightMm);
        InterpolatedChannel levels = picture.levels();
        for (int sign : new int[] {1, -1}) {
            List<List<Point>> sides = IntStream.range(0, 4)
                    // Pixels count downwards, so what lies to the left as seen lies to the right by them.
                    .mapToObj(k -> RectangleSideDetector.detect(levels, corners.get((k + 1) % 4), corners.get(k), sign))
                    .toList();
            if (sides.stream().noneMatch(List::isEmpty)) {
                Found byEdges =
                        new Found(RectangleEdges.of(corners, sides, widthMm, heightMm), true, widthMm, heightMm);
                if (fits(byEdges, picture)) {
                    return byEdges;
                }
            }
        }
        return byCorners;
    }

    /** What was told of the lens has no say in it: it may be wrong, and the edges right. */
    private static boolean fits(Found found, DecodedPhoto picture) {
        ViewSolver.Solution fit = found.located().solve(picture, LensPrior.usual(picture.diagonalPx()));
        return fit.inliers() >= LEAST_FITTING * found.references().size() && fit.pixelSigma() < CORNER_SIGMA_PX;
    }

    /**
     * The corners anticlockwise as seen, the first two still along the width: the lower side from left to right, where
     * they were given from the upper left one on.
     */
    private static List<Point> anticlockwise(List<Point> told) {
        List<Point> corners = new ArrayList<>(told);
        double turn = told.get(1).minus(told.get(0)).cross(told.get(2).minus(told.get(1)));
        // Positive is clockwise as seen, for pixels count downwards.
        if (turn > 0) {
            Collections.reverse(corners);
        }
        return turn > 0 ? corners : List.copyOf(told);
    }
}
