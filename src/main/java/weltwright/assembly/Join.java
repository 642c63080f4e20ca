package weltwright.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;

/**
 * A seam or a row of rivets seen as a joint: are the layers sewn edge on edge, as a stack, or are they laid upon one of
 * them, as a patch? It shows in the distances from the holes to the cut: in a stack they are the same on the outer
 * layers, on a patch they are less than on what it is laid on. Rivets make no stack.
 *
 * @param name of the seam or the fastening
 * @param seam the row of stitches, where it is one
 * @param layers from the face to the back, or from the head on
 * @param pieces of each layer
 * @param under which layer the others are laid upon; -1 in a stack
 * @param toCutMm how far the holes of each layer are from its cut
 * @param stackMm all layers one on another
 */
record Join(
        String name,
        Optional<Seam> seam,
        List<Seam.Layer> layers,
        List<Piece> pieces,
        int under,
        List<Double> toCutMm,
        double stackMm) {
    /** Two layers of a stack are cut to the same distance; glue and the bend of the leather may hide this much. */
    private static final double SAME_MM = 1;

    /** What is sewn first, then what is riveted. A snap joins nothing for good, and a ring holds by its straps. */
    static List<Join> of(Pattern pattern) {
        Stream<Join> sewn = pattern.seams().stream()
                .map(seam -> of(seam.name(), Optional.of(seam), seam.layers(), pattern.pieces()));
        Stream<Join> riveted = pattern.fastenings().stream()
                .filter(fastening -> fastening.kind() == Hardware.Kind.RIVET)
                .map(rivets -> of(rivets.name(), Optional.empty(), rivets.layers(), pattern.pieces()));
        return Stream.concat(sewn, riveted).toList();
    }

    private static Join of(String name, Optional<Seam> seam, List<Seam.Layer> layers, List<Piece> all) {
        List<Piece> pieces = new ArrayList<>();
        List<Double> distances = new ArrayList<>();
        for (Seam.Layer layer : layers) {
            Piece piece = all.stream()
                    .filter(candidate -> candidate.name().equals(layer.piece()))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "the " + name + " joins a " + layer.piece() + " that is not there"));
            pieces.add(piece);
            distances.add(middleDistance(piece, layer));
        }
        int last = layers.size() - 1;
        boolean stack = seam.isPresent() && Math.abs(distances.get(0) - distances.get(last)) <= SAME_MM;
        int under = stack
                ? -1
                : IntStream.rangeClosed(0, last)
                        .reduce((a, b) -> distances.get(b) > distances.get(a) + 1e-6 ? b : a)
                        .orElseThrow();
        double thick = seam.map(Seam::thickestStackMm)
                .orElseGet(() ->
                        layers.stream().mapToDouble(Seam.Layer::thicknessMm).sum());
        return new Join(name, seam, layers, List.copyOf(pieces), under, List.copyOf(distances), thick);
    }

    /** The median, which a few holes at a corner do not sway. */
    private static double middleDistance(Piece piece, Seam.Layer layer) {
        double[] distances = layer.holes().stream()
                .mapToDouble(hole -> SewnRow.Foot.of(hole, piece.outline()).distanceMm())
                .sorted()
                .toArray();
        return distances[distances.length / 2];
    }

    boolean stack() {
        return under < 0;
    }

    /** How far the row runs from the edge that it is sewn along. */
    double fromEdgeMm() {
        return Math.min(toCutMm.get(0), toCutMm.get(toCutMm.size() - 1));
    }

    boolean joins(String piece) {
        return layers.stream().anyMatch(layer -> layer.piece().equals(piece));
    }

    /** The layers that are part of this piece. */
    IntStream layersOf(Piece piece) {
        return IntStream.range(0, pieces.size())
                .filter(i -> pieces.get(i).name().equals(piece.name()));
    }

    List<String> pieceNames() {
        return pieces.stream().map(Piece::name).distinct().toList();
    }

    /** Whether this layer of a stack lies between others, as a welt does. */
    boolean isInside(int layer) {
        return stack() && layer > 0 && layer < pieces.size() - 1;
    }

    /** The stitches of a seam in one of its layers. */
    Polyline row(int layer) {
        return new Polyline(layers.get(layer).holes(), seam.map(Seam::closed).orElse(false));
    }

    /**
     * The fold of a piece that is laid upon itself: the one across which its holes come to lie nearest to their
     * partners. Empty where one piece is laid upon another.
     */
    Optional<Mark> fold() {
        if (stack() || pieceNames().size() > 1) {
            return Optional.empty();
        }
        List<Point> laid = layers.get(under == 0 ? 1 : 0).holes();
        List<Point> on = layers.get(under).holes();
        return pieces.get(under).marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.FOLD)
                .min((a, b) -> Double.compare(apart(a, laid, on), apart(b, laid, on)));
    }

    private static double apart(Mark fold, List<Point> laid, List<Point> on) {
        Point at = fold.line().points().get(0);
        Point along = fold.line().points().get(1).minus(at).unit();
        double sum = 0;
        for (int i = 0; i < laid.size(); i++) {
            Point from = laid.get(i).minus(at);
            Point mirrored = at.plus(along.times(2 * from.dot(along))).minus(from);
            sum += mirrored.distance(on.get(i));
        }
        return sum;
    }
}
