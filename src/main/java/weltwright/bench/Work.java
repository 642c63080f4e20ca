package weltwright.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import weltwright.sheath.Pattern;

/** The operations and constraints as they are being gathered, and what later ones have to know of earlier ones. */
final class Work {
    final Pattern pattern;
    final List<Join> joins;
    final List<Edge> edges;
    final List<Operation> operations = new ArrayList<>();
    final Set<Constraint> constraints = new LinkedHashSet<>();

    /** By piece: its cut. */
    final Map<String, Operation> cuts = new LinkedHashMap<>();

    /** By piece: the last that has to be done before a hole is made or it is joined. */
    final Map<String, Operation> prepared = new LinkedHashMap<>();

    /** By piece: its holes. */
    final Map<String, List<Operation>> punches = new LinkedHashMap<>();

    /** By join: what closes it, glue or rivets. */
    final Map<String, Operation> closings = new LinkedHashMap<>();

    /** By join: what makes it last, stitches or rivets. */
    final Map<String, Operation> fixings = new LinkedHashMap<>();

    Work(Pattern pattern, List<Join> joins, List<Edge> edges) {
        this.pattern = pattern;
        this.joins = joins;
        this.edges = edges;
    }

    Operation add(Step step, String work, String piece, String tool, String size) {
        return add(step, work, List.of(piece), tool, size, false);
    }

    Operation add(Step step, String work, List<String> pieces, String tool, String size) {
        return add(step, work, pieces, tool, size, false);
    }

    Operation add(Step step, String work, List<String> pieces, String tool, String size, boolean before) {
        Operation operation = new Operation(step, work, pieces, tool, size, before);
        operations.add(operation);
        return operation;
    }

    void after(Operation before, Operation after, String why) {
        constraints.add(new Constraint(before, after, why));
    }
}
