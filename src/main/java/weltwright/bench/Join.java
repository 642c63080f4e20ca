package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;
import weltwright.sheath.Seam;

/**
 * A seam seen as a joint: are the layers sewn edge on edge, as a stack, or is one laid upon another, as a patch? It shows in
 * the distances from the holes to the cut: in a stack they are the same on the outer layers, on a patch they are less than on
 * what it is laid on.
 *
 * @param seam the row of stitches
 * @param pieces of each layer
 * @param stack whether the edges of all layers lie one on another
 * @param upper which layer is laid upon the others; the first of a stack
 * @param fromEdgeMm how far the row runs from the edge of that layer
 */
record Join(Seam seam, List<Piece> pieces, boolean stack, int upper, double fromEdgeMm) {
    /** Two layers of a stack are cut to the same distance; glue and the bend of the leather may hide this much. */
    private static final double SAME_MM = 1;

    static List<Join> of(Pattern pattern) {
        return pattern.seams().stream().map(seam -> of(seam, pattern.pieces())).toList();
    }

    private static Join of(Seam seam, List<Piece> all) {
        List<Piece> pieces = new ArrayList<>();
        for (Seam.Layer layer : seam.layers()) {
            pieces.add(all.stream()
                    .filter(piece -> piece.name().equals(layer.piece()))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "the " + seam.name() + " joins a " + layer.piece() + " that is not there")));
        }
        int last = pieces.size() - 1;
        double first = middleDistance(pieces.get(0), seam.layers().get(0));
        double other = middleDistance(pieces.get(last), seam.layers().get(last));
        boolean stack = Math.abs(first - other) <= SAME_MM;
        return new Join(seam, pieces, stack, stack || first < other ? 0 : last, Math.min(first, other));
    }

    /** The median, which a few holes at a corner do not sway. */
    private static double middleDistance(Piece piece, Seam.Layer layer) {
        Geometry cut = piece.outline().lineString();
        double[] distances = layer.holes().stream()
                .mapToDouble(hole -> cut.distance(cut.getFactory().createPoint(hole.coordinate())))
                .sorted()
                .toArray();
        return distances[distances.length / 2];
    }

    String name() {
        return seam.name();
    }

    boolean joins(String piece) {
        return seam.layers().stream().anyMatch(layer -> layer.piece().equals(piece));
    }

    /** The layers that are part of this piece. */
    IntStream layersOf(Piece piece) {
        return IntStream.range(0, pieces.size()).filter(i -> pieces.get(i).name().equals(piece.name()));
    }

    /** Whether this layer of a stack lies between others, as a welt does. */
    boolean isInside(int layer) {
        return stack && layer > 0 && layer < pieces.size() - 1;
    }

    Polyline row(int layer) {
        return new Polyline(seam.layers().get(layer).holes(), seam.closed());
    }

    /** All layers one on another, where they are thickest. */
    double stackMm() {
        return seam.thickestStackMm();
    }

    /**
     * The fold of a piece that is laid upon itself: the one across which its holes come to lie nearest to their partners.
     */
    Optional<Mark> fold() {
        Piece piece = pieces.get(upper);
        int lower = pieces.size() - 1 - upper;
        if (stack || !pieces.get(lower).name().equals(piece.name())) {
            return Optional.empty();
        }
        List<Point> laid = seam.layers().get(upper).holes();
        List<Point> under = seam.layers().get(lower).holes();
        return piece.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.FOLD)
                .min((a, b) -> Double.compare(apart(a, laid, under), apart(b, laid, under)));
    }

    private static double apart(Mark fold, List<Point> laid, List<Point> under) {
        Point at = fold.line().points().get(0);
        Point along = fold.line().points().get(1).minus(at).unit();
        double sum = 0;
        for (int i = 0; i < laid.size(); i++) {
            Point from = laid.get(i).minus(at);
            Point mirrored = at.plus(along.times(2 * from.dot(along))).minus(from);
            sum += mirrored.distance(under.get(i));
        }
        return sum;
    }
}
