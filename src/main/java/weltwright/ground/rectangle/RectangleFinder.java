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
 * Refines a rectangle whose corners were set by hand.
 *
 * <p>Where edges can be detected between all four corners, and a view of a rectangle of the stated size fits them, they
 * replace the corners: hundreds of points to a fraction of a pixel instead of four to a few pixels. Otherwise, where
 * the rectangle consists of marks or its edges are worn or hidden, the corners are used.
 */
public final class RectangleFinder {
    /**
     * Standard deviation of a coordinate of a corner set by hand, in pixels: pointing, and rounding of real corners.
     * Common practice.
     */
    public static final double CORNER_SIGMA_PX = 2;

    /** Standard deviation of a side measured with a ruler. Common practice. */
    private static final double SIDE_SIGMA_MM = 0.4;

    /** Least part of the edge points that fit a rectangle of the stated size. Chosen by eye. */
    private static final double LEAST_FITTING = 0.85;

    private RectangleFinder() {}

    /**
     * A rectangle. Its frame has x from the first corner to the second, or reversed where y would otherwise point
     * downwards as seen from above; its origin is in the middle.
     *
     * @param references the four corners, or points of all four edges
     * @param byEdges whether the references are points of edges
     * @param sizeXMm length along x
     * @param sizeYMm length along y
     */
    public record Found(List<ControlPoint> references, boolean byEdges, double sizeXMm, double sizeYMm) {
        /** Returns the ground to solve the view from. */
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
     * Detects the edges of a rectangle.
     *
     * @param marked its corners in the picture, in either direction round
     * @param widthMm length from the first corner to the second
     * @param heightMm length from the second corner to the third
     */
    public static Found find(DecodedPhoto picture, List<Point> marked, double widthMm, double heightMm) {
        List<Point> corners = anticlockwise(marked);
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
                    // From corner k + 1 to k, since rows count downwards and the inside must lie on the left.
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

    /**
     * Whether a view fits the edges. The lens prior of the user is not used, since it may be wrong where the edges are
     * right.
     */
    private static boolean fits(Found found, DecodedPhoto picture) {
        ViewSolver.Solution fit = found.located().solve(picture, LensPrior.usual(picture.diagonalPx()));
        return fit.inliers() >= LEAST_FITTING * found.references().size() && fit.pixelSigma() < CORNER_SIGMA_PX;
    }

    /** Returns the corners anticlockwise as seen, with the first two still along the width. */
    private static List<Point> anticlockwise(List<Point> marked) {
        List<Point> corners = new ArrayList<>(marked);
        double orientation =
                marked.get(1).minus(marked.get(0)).cross(marked.get(2).minus(marked.get(1)));
        // Positive is clockwise as seen, since rows count downwards.
        if (orientation > 0) {
            Collections.reverse(corners);
        }
        return orientation > 0 ? corners : List.copyOf(marked);
    }
}
