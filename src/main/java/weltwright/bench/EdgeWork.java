package weltwright.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import weltwright.sheath.Piece;

/** What is done to the edges: to those of single leather, and to those of a sewn stack as one. */
final class EdgeWork {
    private static final String SEWN_EDGE = "sewn edge of the ";

    private final Work work;

    EdgeWork(Work work) {
        this.work = work;
    }

    /** Grooves, bevels and burnishes the edges of single leather, and grooves the rows that stitches lie in. */
    List<Operation> singleEdges() {
        List<Operation> all = new ArrayList<>();
        for (Piece piece : work.pattern.pieces()) {
            Map<Edge, List<Operation>> done = new LinkedHashMap<>();
            for (Step step : List.of(Step.GROOVE, Step.BEVEL, Step.BURNISH)) {
                Predicate<Edge> now = edge -> edge.state() != EdgeState.SEWN || step == Step.GROOVE;
                groups(piece, step, now).forEach((treatment, alike) -> {
                    Operation operation = onEdges(piece.name(), treatment, alike);
                    work.after(work.cuts.get(piece.name()), operation, "there is no edge before the cut");
                    alike.forEach(edge ->
                            done.computeIfAbsent(edge, key -> new ArrayList<>()).add(operation));
                });
            }
            done.forEach(this::constrainEdge);
            done.values().forEach(all::addAll);
        }
        return all;
    }

    /** Like treatments of a piece's edges are one operation. */
    private Map<Treatment, List<Edge>> groups(Piece piece, Step step, Predicate<Edge> now) {
        Map<Treatment, List<Edge>> groups = new LinkedHashMap<>();
        work.edges.stream()
                .filter(edge -> edge.piece().equals(piece.name()) && now.test(edge))
                .forEach(edge -> edge.treatments().stream()
                        .filter(treatment -> treatment.step() == step)
                        .forEach(treatment ->
                                groups.computeIfAbsent(treatment, key -> new ArrayList<>()).add(edge)));
        return groups;
    }

    private Operation onEdges(String piece, Treatment treatment, List<Edge> on) {
        boolean allRound = work.edges.stream()
                .filter(edge -> edge.piece().equals(piece))
                .allMatch(edge -> edge.state() != EdgeState.SEWN && on.contains(edge));
        List<String> names = on.stream()
                .map(Edge::name)
                .distinct()
                .map(name -> named(on.stream().filter(edge -> edge.name().equals(name)).toList()))
                .toList();
        String where = (allRound ? "the edges" : Words.and(names)) + " of the " + piece;
        String what = switch (treatment.step()) {
            case GROOVE -> "Groove " + where + ", on the grain side";
            case BEVEL -> "Bevel " + where + ", " + treatment.side().words();
            default -> "Burnish " + where;
        };
        boolean before = on.stream().anyMatch(Edge::finishedBeforeAssembly);
        return work.add(treatment.step(), what, List.of(piece), treatment.tool(), treatment.size(), before);
    }

    /**
     * Edges of one name. What is worked on before a stack is sewn is not its edge but the line of its stitches.
     */
    private static String named(List<Edge> alike) {
        Edge first = alike.get(0);
        List<String> parts = alike.stream().map(Edge::part).distinct().toList();
        String name = first.state() == EdgeState.SEWN ? "stitch row of the " + first.join().orElseThrow() : first.name();
        boolean onOnePart = parts.size() == 1 && first.part().endsWith("half");
        return "the " + name + (onOnePart ? " (" + first.part() + ")" : "");
    }

    private void constrainEdge(Edge edge, List<Operation> done) {
        for (int i = 0; i + 1 < done.size(); i++) {
            work.after(
                    done.get(i),
                    done.get(i + 1),
                    done.get(i + 1).step() == Step.BEVEL
                            ? "the groover runs along a square edge"
                            : "an edge is burnished round");
        }
        Optional<Join> join = work.joins.stream()
                .filter(candidate -> edge.join().equals(Optional.of(candidate.name())))
                .findFirst();
        boolean alongStitches = edge.state() == EdgeState.SEWN || join.map(j -> !j.stack()).orElse(false);
        for (Operation operation : done) {
            if (operation.step() == Step.GROOVE) {
                work.after(work.prepared.get(edge.piece()), operation, "the row is marked first");
                if (alongStitches) {
                    work.punches.get(edge.piece())
                            .forEach(punch -> work.after(operation, punch, "the chisel stands in the groove"));
                }
            }
            join.map(j -> work.closings.get(j.name())).ifPresent(closing ->
                    work.after(operation, closing, "out of reach once the " + edge.join().get() + " is closed"));
        }
    }

    /** Trims, bevels and burnishes the edge of a sewn stack, as one. */
    List<Operation> sewnEdges(Join join) {
        List<Edge> sewn = work.edges.stream()
                .filter(edge -> edge.state() == EdgeState.SEWN && edge.join().equals(Optional.of(join.name())))
                .toList();
        List<Operation> done = new ArrayList<>();
        Operation last = work.fixings.get(join.name());
        for (Step step : List.of(Step.TRIM, Step.BEVEL, Step.BURNISH)) {
            Set<Treatment> treatments = sewn.stream()
                    .flatMap(edge -> edge.treatments().stream())
                    .filter(treatment -> treatment.step() == step)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            for (Treatment treatment : treatments) {
                String what = switch (step) {
                    case TRIM -> "Trim and sand the " + SEWN_EDGE + join.name() + " flush";
                    case BEVEL -> "Bevel the " + SEWN_EDGE + join.name() + ", face and back";
                    default -> "Burnish the " + SEWN_EDGE + join.name() + ", all layers as one";
                };
                Operation operation = work.add(step, what, join.pieceNames(), treatment.tool(), treatment.size(), false);
                work.after(last, operation, step == Step.TRIM ? "the layers are one only when sewn" : "flush before round");
                last = operation;
                done.add(operation);
            }
        }
        return done;
    }
}
