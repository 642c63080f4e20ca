package weltwright.assembly;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.linearref.LengthIndexedLine;
import weltwright.assembly.FootFinder.Foot;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Mark;

/**
 * The row of a seam in one of its layers, with the side on which its sewn edge lies.
 *
 * @param outside for a layer between others: 1 where its sewn edge lies on the left of the row, -1 on the right; else 0
 * @param fold fold of a patch that is folded back onto its own piece
 */
record SewnRow(Join join, int layer, FootFinder feet, int outside, Optional<Mark> fold) {
    /** Least significant difference of two distances to an edge. Chosen by eye. */
    private static final double ALIKE_MM = 0.15;

    /** Spacing of samples. Chosen by eye. */
    private static final double STEP_MM = 2;

    static SewnRow of(Join join, int layer) {
        Optional<Mark> fold = layer == join.under() ? Optional.empty() : join.fold();
        FootFinder feet = new FootFinder(join.row(layer));
        return new SewnRow(join, layer, feet, join.isInside(layer) ? outside(join, layer, feet) : 0, fold);
    }

    /** Returns the point of the row nearest to another. */
    Foot foot(Point p) {
        return feet.of(p);
    }

    /** Returns whether a point lies on the side of the sewn edge; always true except for a layer between others. */
    boolean isOnSewnSide(Point p, Foot foot) {
        return outside == 0 || outside * foot.along().cross(p.minus(foot.at())) > 0;
    }

    /**
     * Returns the side of the sewn edge of a layer between others, which has an edge on both sides: the one whose
     * distance is that of the sewn edge of the outer layers. If both are, it is the side on the first layer, mirrored
     * where this layer is seen from its other face.
     */
    private static int outside(Join join, int layer, FootFinder feet) {
        Polyline row = join.row(layer);
        double left = Math.abs(middleDistance(join, layer, feet, 1) - join.fromEdgeMm());
        double right = Math.abs(middleDistance(join, layer, feet, -1) - join.fromEdgeMm());
        if (Math.abs(left - right) > ALIKE_MM) {
            return left < right ? 1 : -1;
        }
        Polyline first = join.row(0);
        Point p = join.pieces()
                .get(0)
                .outline()
                .at(nearestOnCut(join.pieces().get(0).outline(), middle(first)));
        Foot foot = new FootFinder(first).of(p);
        boolean onLeft = foot.along().cross(p.minus(foot.at())) > 0;
        int from = join.layers().get(layer).firstHole();
        boolean turnedOver =
                sense(first.points().subList(from, from + row.points().size())) != sense(row.points());
        return onLeft != turnedOver ? 1 : -1;
    }

    /** Returns the median distance between a row and the cut on its left (1) or right (-1). */
    private static double middleDistance(Join join, int layer, FootFinder feet, int side) {
        double[] distances = join.pieces().get(layer).outline().resampled(STEP_MM).points().stream()
                .map(p -> Map.entry(p, feet.of(p)))
                .filter(entry -> !entry.getValue().beyondEnd())
                .filter(entry -> side
                                * entry.getValue()
                                        .along()
                                        .cross(entry.getKey()
                                                .minus(entry.getValue().at()))
                        > 0)
                .mapToDouble(entry -> entry.getValue().distanceMm())
                .sorted()
                .toArray();
        return distances.length == 0 ? Double.POSITIVE_INFINITY : distances[distances.length / 2];
    }

    private static Point middle(Polyline row) {
        return row.points().get(row.points().size() / 2);
    }

    private static double nearestOnCut(Polyline cut, Point p) {
        return new LengthIndexedLine(cut.lineString()).project(p.coordinate());
    }

    /** Returns the orientation of the polygon of a row and the chord between its ends. */
    private static double sense(List<Point> row) {
        return Math.signum(Polyline.closed(row).signedAreaMm2());
    }
}
