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
import weltwright.units.MeasureUnit;

/** Collects operations and constraints, with an index of those that later ones refer to. */
final class OperationCollector {
    final Pattern pattern;
    final List<Join> joins;
    final List<LeatherEdge> edges;

    /** Of lengths in texts. */
    final MeasureUnit unit;

    final List<Operation> operations = new ArrayList<>();
    final Set<OperationConstraint> constraints = new LinkedHashSet<>();

    /** Cutting, by piece. */
    final Map<String, Operation> cuts = new LinkedHashMap<>();

    /** The last preparation before punching or joining, by piece. */
    final Map<String, Operation> prepared = new LinkedHashMap<>();

    /** Punching, by piece. */
    final Map<String, List<Operation>> punches = new LinkedHashMap<>();

    /** All operations on a flat and dry piece (holes, edges, dye), by piece. */
    final Map<String, Set<Operation>> flat = new LinkedHashMap<>();

    /** Bending, by piece, where it is cased for that. */
    final Map<String, Operation> folds = new LinkedHashMap<>();

    /** The operation that closes a join (glue, rivets), by join. */
    final Map<String, Operation> closings = new LinkedHashMap<>();

    /** The operation that fixes a join (stitches, rivets), by join. */
    final Map<String, Operation> fixings = new LinkedHashMap<>();

    OperationCollector(Pattern pattern, List<Join> joins, List<LeatherEdge> edges, MeasureUnit unit) {
        this.pattern = pattern;
        this.joins = joins;
        this.edges = edges;
        this.unit = unit;
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

    /** Records an operation on a flat and dry piece. */
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
