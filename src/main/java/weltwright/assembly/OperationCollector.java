package weltwright.assembly;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/** The operations and constraints as they are being gathered, and what later ones have to know of earlier ones. */
final class OperationCollector {
    final Pattern pattern;
    final List<Join> joins;
    final List<LeatherEdge> edges;
    final List<Operation> operations = new ArrayList<>();
    final Set<OperationConstraint> constraints = new LinkedHashSet<>();

    /** By piece: its cut. */
    final Map<String, Operation> cuts = new LinkedHashMap<>();

    /** By piece: the last that has to be done before a hole is made or it is joined. */
    final Map<String, Operation> prepared = new LinkedHashMap<>();

    /** By piece: its holes. */
    final Map<String, List<Operation>> punches = new LinkedHashMap<>();

    /** By piece: all that is done while it lies flat and dry: holes, edges, dye. */
    final Map<String, Set<Operation>> flat = new LinkedHashMap<>();

    /** By piece: its bending, where it is cased for that. */
    final Map<String, Operation> folds = new LinkedHashMap<>();

    /** By join: what closes it, glue or rivets. */
    final Map<String, Operation> closings = new LinkedHashMap<>();

    /** By join: what makes it last, stitches or rivets. */
    final Map<String, Operation> fixings = new LinkedHashMap<>();

    OperationCollector(Pattern pattern, List<Join> joins, List<LeatherEdge> edges) {
        this.pattern = pattern;
        this.joins = joins;
        this.edges = edges;
    }

    Operation add(Operation operation) {
        operations.add(operation);
        return operation;
    }

    void after(Operation before, Operation after, String why) {
        constraints.add(new OperationConstraint(before, after, why));
    }

    Operation cut(String piece) {
        return known(cuts, piece);
    }

    Operation prepared(String piece) {
        return known(prepared, piece);
    }

    List<Operation> punches(String piece) {
        return known(punches, piece);
    }

    Operation closing(String join) {
        return known(closings, join);
    }

    Operation fixing(String join) {
        return known(fixings, join);
    }

    private static <T> T known(Map<String, T> operations, String name) {
        return Objects.requireNonNull(operations.get(name), () -> "no such operation on the " + name);
    }

    /** Notes that something is done to a piece while it is flat and dry. */
    void doneFlat(String piece, Operation operation) {
        flat.computeIfAbsent(piece, key -> new LinkedHashSet<>()).add(operation);
    }

    boolean isSetOnTheKnife(Piece piece, Hole hole) {
        return pattern.fastenings().stream()
                .flatMap(fastening -> fastening.setOnTheKnife().stream())
                .filter(layer -> layer.piece().equals(piece.name()))
                .anyMatch(layer -> layer.holes().contains(hole.centre()));
    }
}
