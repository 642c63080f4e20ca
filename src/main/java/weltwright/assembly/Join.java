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
 * A seam or a row of rivets as a joint: a stack, whose layers are sewn edge on edge, or a patch, laid upon one of its
 * layers. They are distinguished by the distances from the holes to the cut, which are equal on the outer layers of a
 * stack and less on a patch than on the layer below. Rivets make no stack.
 *
 * @param name of the seam or hardware
 * @param seam the seam, where it is one
 * @param layers from the face to the back, or from the head on
 * @param pieces the piece of each layer
 * @param under index of the layer that the others are laid upon; -1 in a stack
 * @param toCutMm median distance of the holes of each layer from its cut
 * @param stackMm thickness of all layers together
 */
record Join(
        String name,
        Optional<Seam> seam,
        List<Seam.Layer> layers,
        List<Piece> pieces,
        int under,
        List<Double> toCutMm,
        double stackMm) {
    /** Greatest difference of the distances of the outer layers of a stack. Chosen by eye. */
    private static final double SAME_MM = 1;

    /** Lists the joins of a pattern: seams, then rivets. Snaps and rings are not joins. */
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

    /** Returns the median distance of the holes from the cut, which a few holes at a corner do not affect. */
    private static double middleDistance(Piece piece, Seam.Layer layer) {
        FootFinder cut = new FootFinder(piece.outline());
        double[] distances = layer.holes().stream()
                .mapToDouble(hole -> cut.of(hole).distanceMm())
                .sorted()
                .toArray();
        return distances[distances.length / 2];
    }

    boolean stack() {
        return under < 0;
    }

    /** Returns the distance of the row from the edge along which it is sewn. */
    double fromEdgeMm() {
        return Math.min(toCutMm.get(0), toCutMm.get(toCutMm.size() - 1));
    }

    boolean joins(String piece) {
        return layers.stream().anyMatch(layer -> layer.piece().equals(piece));
    }

    /** Returns the indices of the layers of a piece. */
    IntStream layersOf(Piece piece) {
        return IntStream.range(0, pieces.size())
                .filter(i -> pieces.get(i).name().equals(piece.name()));
    }

    List<String> pieceNames() {
        return pieces.stream().map(Piece::name).distinct().toList();
    }

    /** Returns whether a layer of a stack lies between others, as a welt does. */
    boolean isInside(int layer) {
        return stack() && layer > 0 && layer < pieces.size() - 1;
    }

    /** Returns the row of holes in one layer. */
    Polyline row(int layer) {
        return new Polyline(layers.get(layer).holes(), seam.map(Seam::closed).orElse(false));
    }

    /**
     * Returns the fold of a piece that is laid upon itself: the one across which its holes, mirrored, are nearest to
     * their counterparts. Empty where one piece is laid upon another.
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
