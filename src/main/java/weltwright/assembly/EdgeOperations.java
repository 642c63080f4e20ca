package weltwright.assembly;

import static weltwright.assembly.AssemblyText.and;
import static weltwright.assembly.AssemblyText.text;
import static weltwright.assembly.AssemblyText.the;
import static weltwright.assembly.OperationKind.BEVEL;
import static weltwright.assembly.OperationKind.BURNISH;
import static weltwright.assembly.OperationKind.DYE;
import static weltwright.assembly.OperationKind.GROOVE;
import static weltwright.assembly.OperationKind.SAND;
import static weltwright.assembly.OperationKind.TRIM;
import static weltwright.assembly.WorkPhase.EDGES;
import static weltwright.assembly.WorkPhase.FINISH;
import static weltwright.assembly.WorkPhase.HOLES;
import static weltwright.assembly.WorkPhase.SHAPE;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import weltwright.sheath.pattern.CuttingSide;
import weltwright.sheath.pattern.Piece;

/** Adds the operations on edges: on those of single leather, and on those of a sewn stack together. */
final class EdgeOperations {
    private static final String SEWN_EDGE = "sewn edge of the ";
    private static final List<OperationKind> SINGLE = List.of(GROOVE, BEVEL, SAND, BURNISH);

    private final OperationCollector work;

    EdgeOperations(OperationCollector work) {
        this.work = work;
    }

    /** Adds grooving, bevelling, sanding, dyeing and burnishing of single leather, and grooving of stitch rows. */
    List<Operation> singleEdges() {
        Map<LeatherEdge, List<Operation>> done = new LinkedHashMap<>();
        for (OperationKind step : SINGLE) {
            groups(step).forEach((treatment, alike) -> {
                Operation operation = work.add(onEdges(treatment, alike));
                alike.forEach(edge -> {
                    work.after(work.cut(edge.piece()), operation, "there is no edge before the cut");
                    work.doneFlat(edge.piece(), operation);
                    done.computeIfAbsent(edge, key -> new ArrayList<>()).add(operation);
                });
            });
        }
        done.forEach(this::constrainEdge);
        List<Operation> all =
                done.values().stream().flatMap(List::stream).distinct().toList();
        dye(all);
        return all;
    }

    /** Groups edges by treatment; each group is one operation. */
    private Map<EdgeTreatment, List<LeatherEdge>> groups(OperationKind step) {
        Map<EdgeTreatment, List<LeatherEdge>> groups = new LinkedHashMap<>();
        for (LeatherEdge edge : work.edges) {
            if (edge.state() != LeatherEdgeState.SEWN || step == GROOVE) {
                edge.treatments().stream()
                        .filter(treatment -> treatment.step() == step)
                        .forEach(treatment -> groups.computeIfAbsent(treatment, key -> new ArrayList<>())
                                .add(edge));
            }
        }
        return groups;
    }

    private Operation onEdges(EdgeTreatment treatment, List<LeatherEdge> on) {
        Map<String, List<LeatherEdge>> byPiece =
                on.stream().collect(Collectors.groupingBy(LeatherEdge::piece, LinkedHashMap::new, Collectors.toList()));
        String where = byPiece.entrySet().stream()
                .map(entry -> named(entry.getKey(), entry.getValue()))
                .collect(Collectors.joining("; "));
        double mm = on.stream().mapToDouble(edge -> edge.line().lengthMm()).sum();
        String what = switch (treatment.step()) {
            case GROOVE -> text("Groove %s, on the grain side", where);
            case BEVEL -> text("Bevel %s, %s", where, treatment.side().words());
            case SAND -> text("Sand the bevelled edges of %s smooth", the(List.copyOf(byPiece.keySet())));
            default -> text("Burnish %s", where);
        };
        double minutes = switch (treatment.step()) {
            case GROOVE -> WorkRate.GROOVE_MM.minutes(mm);
            case BEVEL -> WorkRate.BEVEL_MM.minutes(mm);
            case SAND -> WorkRate.SAND_MM.minutes(mm);
            default -> WorkRate.BURNISH_MM.minutes(mm);
        };
        WorkPhase phase = treatment.step() == GROOVE ? HOLES : EDGES;
        Operation operation = Operation.of(phase, treatment.step(), List.copyOf(byPiece.keySet()), what)
                .with(treatment.tool(), treatment.size())
                .taking(minutes)
                .beforeAssembly(on.stream().anyMatch(LeatherEdge::finishedBeforeAssembly));
        return treatment.step() == SAND ? operation.noting("Wear a mask.") : operation;
    }

    private String named(String piece, List<LeatherEdge> on) {
        boolean allRound = work.edges.stream()
                .filter(edge -> edge.piece().equals(piece))
                .allMatch(edge -> edge.state() != LeatherEdgeState.SEWN && on.contains(edge));
        List<String> names = on.stream()
                .collect(Collectors.groupingBy(LeatherEdge::name, LinkedHashMap::new, Collectors.toList()))
                .values()
                .stream()
                .map(EdgeOperations::named)
                .toList();
        return (allRound ? "the edges" : and(names)) + " of the " + piece;
    }

    /** Words edges of one name. Before a stack is sewn, its edge is worded as the row of its stitches. */
    private static String named(List<LeatherEdge> alike) {
        LeatherEdge first = alike.get(0);
        String name = first.state() == LeatherEdgeState.SEWN
                ? "stitch row of the " + first.join().orElseThrow()
                : first.name();
        boolean onOneHalf = first.part().isHalf() && alike.stream().allMatch(edge -> edge.part() == first.part());
        return "the " + name + (onOneHalf ? " (" + first.part().words() + ")" : "");
    }

    private void constrainEdge(LeatherEdge edge, List<Operation> done) {
        for (int i = 0; i + 1 < done.size(); i++) {
            work.after(
                    done.get(i),
                    done.get(i + 1),
                    switch (done.get(i + 1).step()) {
                        case BEVEL -> "the groover runs along a square edge";
                        case SAND -> "sanding takes away what the edger leaves";
                        default -> "only a smooth edge burnishes";
                    });
        }
        Optional<Join> join = work.joins.stream()
                .filter(candidate -> edge.join().equals(Optional.of(candidate.name())))
                .findFirst();
        boolean alongStitches = edge.state() == LeatherEdgeState.SEWN
                || join.map(j -> !j.stack()).orElse(false);
        for (Operation operation : done) {
            if (operation.step() == GROOVE) {
                work.after(work.prepared(edge.piece()), operation, "the row is marked first");
                if (alongStitches) {
                    work.punches(edge.piece())
                            .forEach(punch -> work.after(operation, punch, "the chisel stands in the groove"));
                }
            }
            join.map(j -> work.closings.get(j.name()))
                    .ifPresent(closing -> work.after(
                            operation,
                            closing,
                            "out of reach once the " + edge.join().get() + " is closed"));
            if (work.folds.containsKey(edge.piece())) {
                work.after(operation, work.folds.get(edge.piece()), "edges are worked while the leather lies flat");
            }
        }
    }

    /** Adds dyeing of visible pieces, before assembly and before burnishing closes the edges. */
    private void dye(List<Operation> edgeWork) {
        List<Piece> seen = work.pattern.pieces().stream()
                .filter(piece -> CuttingSide.of(work.pattern, piece) != CuttingSide.EITHER
                        && piece.kind() != Piece.Kind.RIVET_COVER)
                .toList();
        if (seen.isEmpty()) {
            return;
        }
        List<String> names = seen.stream().map(Piece::name).toList();
        Operation dye = work.add(Operation.of(EDGES, DYE, names, "Dye " + the(names) + ", unless left natural")
                .with("dye, wool dauber", "")
                .noting("Keep it off what is glued. Gloves, open window.")
                .taking(WorkRate.DYE_MM2.minutes(
                        seen.stream().mapToDouble(EdgeOperations::areaMm2).sum()))
                .thenWaiting(WaitingTimes.DYE_DRIES_MIN));
        for (String piece : names) {
            work.after(work.prepared(piece), dye, "marks and skiving come first");
            work.punches(piece).forEach(punch -> work.after(punch, dye, "it runs into the holes"));
            if (work.folds.containsKey(piece)) {
                work.after(dye, work.folds.get(piece), "it is dyed flat");
            }
            work.doneFlat(piece, dye);
        }
        edgeWork.forEach(operation -> {
            if (operation.step() == BURNISH) {
                work.after(dye, operation, "a burnished edge takes no dye");
            } else {
                work.after(operation, dye, "what is cut or sanded after dyeing is pale");
            }
        });
        work.pattern
                .fastenings()
                .forEach(fastening -> fastening.layers().stream()
                        .filter(layer -> names.contains(layer.piece()))
                        .forEach(layer -> work.after(dye, work.fixing(fastening.name()), "no dye gets under a cap")));
        work.joins.stream()
                .filter(join -> join.pieceNames().stream().anyMatch(names::contains))
                .forEach(join -> work.after(dye, work.closing(join.name()), "no dye gets between the layers"));
    }

    private static double areaMm2(Piece piece) {
        return Math.abs(piece.outline().signedAreaMm2());
    }

    /**
     * Adds trimming, bevelling, sanding, dyeing and burnishing of the edge of a sewn stack; the sheath is formed in
     * between.
     */
    StackEdgeOperations stackEdges(Join join) {
        List<LeatherEdge> sewn = work.edges.stream()
                .filter(edge ->
                        edge.state() == LeatherEdgeState.SEWN && edge.join().equals(Optional.of(join.name())))
                .toList();
        double mm =
                sewn.stream().mapToDouble(edge -> edge.line().lengthMm()).max().orElse(0);
        List<Operation> square = new ArrayList<>();
        List<Operation> smooth = new ArrayList<>();
        String edge = "the " + SEWN_EDGE + join.name();
        for (EdgeTreatment treatment : treatments(sewn)) {
            Operation operation = switch (treatment.step()) {
                case TRIM ->
                    Operation.of(SHAPE, TRIM, join.pieceNames(), "Trim and sand " + edge + " flush")
                            .noting("Wear a mask.")
                            .taking(WorkRate.TRIM_MM.minutes(mm));
                case BEVEL ->
                    Operation.of(SHAPE, BEVEL, join.pieceNames(), "Bevel " + edge + ", face and back")
                            .taking(WorkRate.BEVEL_MM.minutes(2 * mm));
                case SAND ->
                    Operation.of(FINISH, SAND, join.pieceNames(), "Sand " + edge + " smooth and round")
                            .noting("Wear a mask.")
                            .taking(WorkRate.SAND_MM.minutes(2 * mm));
                default ->
                    Operation.of(FINISH, BURNISH, join.pieceNames(), "Burnish " + edge + ", all layers as one")
                            .taking(WorkRate.BURNISH_MM.minutes(2 * mm));
            };
            if (treatment.step() == BURNISH) {
                smooth.add(
                        work.add(Operation.of(FINISH, DYE, join.pieceNames(), "Dye " + edge + ", unless left natural")
                                .with("edge dye, small brush", "")
                                .taking(5)
                                .thenWaiting(WaitingTimes.EDGE_DYE_DRIES_MIN)));
            }
            boolean beforeForming = operation.phase() == SHAPE;
            (beforeForming ? square : smooth).add(work.add(operation.with(treatment.tool(), treatment.size())));
        }
        if (!square.isEmpty()) {
            work.after(work.fixing(join.name()), square.get(0), "the layers are one only when sewn");
        }
        chain(square, "flush before round");
        chain(smooth, "sanded, then dyed, then burnished");
        return new StackEdgeOperations(square, smooth);
    }

    /**
     * The operations on the edge of a stack.
     *
     * @param square those before the sheath is formed
     * @param smooth those after, as water raises the fibres of the edge
     */
    record StackEdgeOperations(List<Operation> square, List<Operation> smooth) {}

    private void chain(List<Operation> operations, String why) {
        for (int i = 1; i < operations.size(); i++) {
            work.after(operations.get(i - 1), operations.get(i), why);
        }
    }

    private static List<EdgeTreatment> treatments(List<LeatherEdge> sewn) {
        Set<EdgeTreatment> treatments = new LinkedHashSet<>();
        for (OperationKind step : List.of(TRIM, BEVEL, SAND, BURNISH)) {
            sewn.stream()
                    .flatMap(edge -> edge.treatments().stream())
                    .filter(treatment -> treatment.step() == step)
                    .forEach(treatments::add);
        }
        return List.copyOf(treatments);
    }
}
