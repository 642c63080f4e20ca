package weltwright.assembly;

import static weltwright.assembly.AssemblyText.and;
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
import weltwright.message.Messages;
import weltwright.sheath.pattern.CuttingSide;
import weltwright.sheath.pattern.Piece;

/** Adds the operations on edges: on those of single leather, and on those of a sewn stack together. */
final class EdgeOperations {
    private static final Messages TEXTS = Messages.of(EdgeOperations.class);

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
                    work.after(
                            work.cut(edge.piece()), operation, TEXTS.text("edge-operations.there-is-no-edge-before"));
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
            case GROOVE -> TEXTS.text("edge-operations.groove-on-the-grain-side", where);
            case BEVEL ->
                TEXTS.text("edge-operations.bevel", where, treatment.side().words());
            case SAND -> TEXTS.text("edge-operations.sand-the-bevelled-edges-of", the(List.copyOf(byPiece.keySet())));
            default -> TEXTS.text("edge-operations.burnish", where);
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
        return treatment.step() == SAND ? operation.noting(TEXTS.text("edge-operations.wear-a-mask")) : operation;
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
        return TEXTS.text(
                "edge-operations.of-the", allRound ? TEXTS.text("edge-operations.the-edges") : and(names), piece);
    }

    /** Words edges of one name. Before a stack is sewn, its edge is worded as the row of its stitches. */
    private static String named(List<LeatherEdge> alike) {
        LeatherEdge first = alike.get(0);
        String name = first.state() == LeatherEdgeState.SEWN
                ? TEXTS.text("edge-operations.stitch-row-of-the", first.join().orElseThrow())
                : first.name();
        boolean onOneHalf = first.part().isHalf() && alike.stream().allMatch(edge -> edge.part() == first.part());
        return onOneHalf
                ? TEXTS.text("edge-operations.the", name, first.part().words())
                : TEXTS.text("edge-operations.the-2", name);
    }

    private void constrainEdge(LeatherEdge edge, List<Operation> done) {
        for (int i = 0; i + 1 < done.size(); i++) {
            work.after(
                    done.get(i),
                    done.get(i + 1),
                    switch (done.get(i + 1).step()) {
                        case BEVEL -> TEXTS.text("edge-operations.the-groover-runs-along-a");
                        case SAND -> TEXTS.text("edge-operations.sanding-takes-away-what-the");
                        default -> TEXTS.text("edge-operations.only-a-smooth-edge-burnishes");
                    });
        }
        Optional<Join> join = work.joins.stream()
                .filter(candidate -> edge.join().equals(Optional.of(candidate.name())))
                .findFirst();
        boolean alongStitches = edge.state() == LeatherEdgeState.SEWN
                || join.map(j -> !j.stack()).orElse(false);
        for (Operation operation : done) {
            if (operation.step() == GROOVE) {
                work.after(
                        work.prepared(edge.piece()), operation, TEXTS.text("edge-operations.the-row-is-marked-first"));
                if (alongStitches) {
                    work.punches(edge.piece())
                            .forEach(punch -> work.after(
                                    operation, punch, TEXTS.text("edge-operations.the-chisel-stands-in-the")));
                }
            }
            join.map(j -> work.closings.get(j.name()))
                    .ifPresent(closing -> work.after(
                            operation,
                            closing,
                            TEXTS.text(
                                    "edge-operations.out-of-reach-once-the",
                                    edge.join().get())));
            if (work.folds.containsKey(edge.piece())) {
                work.after(
                        operation,
                        work.folds.get(edge.piece()),
                        TEXTS.text("edge-operations.edges-are-worked-while-the"));
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
        Operation dye = work.add(Operation.of(
                        EDGES, DYE, names, TEXTS.text("edge-operations.dye-unless-left-natural", the(names)))
                .with(TEXTS.text("edge-operations.dye-wool-dauber"), "")
                .noting(TEXTS.text("edge-operations.keep-it-off-what-is"))
                .taking(WorkRate.DYE_MM2.minutes(
                        seen.stream().mapToDouble(EdgeOperations::areaMm2).sum()))
                .thenWaiting(WaitingTimes.DYE_DRIES_MIN));
        for (String piece : names) {
            work.after(work.prepared(piece), dye, TEXTS.text("edge-operations.marks-and-skiving-come-first"));
            work.punches(piece)
                    .forEach(punch -> work.after(punch, dye, TEXTS.text("edge-operations.it-runs-into-the-holes")));
            if (work.folds.containsKey(piece)) {
                work.after(dye, work.folds.get(piece), TEXTS.text("edge-operations.it-is-dyed-flat"));
            }
            work.doneFlat(piece, dye);
        }
        edgeWork.forEach(operation -> {
            if (operation.step() == BURNISH) {
                work.after(dye, operation, TEXTS.text("edge-operations.a-burnished-edge-takes-no"));
            } else {
                work.after(operation, dye, TEXTS.text("edge-operations.what-is-cut-or-sanded"));
            }
        });
        work.pattern
                .fastenings()
                .forEach(fastening -> fastening.layers().stream()
                        .filter(layer -> names.contains(layer.piece()))
                        .forEach(layer -> work.after(
                                dye,
                                work.fixing(fastening.name()),
                                TEXTS.text("edge-operations.no-dye-gets-under-a"))));
        work.joins.stream()
                .filter(join -> join.pieceNames().stream().anyMatch(names::contains))
                .forEach(join -> work.after(
                        dye, work.closing(join.name()), TEXTS.text("edge-operations.no-dye-gets-between-the")));
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
        for (EdgeTreatment treatment : treatments(sewn)) {
            Operation operation = switch (treatment.step()) {
                case TRIM ->
                    Operation.of(
                                    SHAPE,
                                    TRIM,
                                    join.pieceNames(),
                                    TEXTS.text("edge-operations.trim-and-sand-flush", join.name()))
                            .noting(TEXTS.text("edge-operations.wear-a-mask"))
                            .taking(WorkRate.TRIM_MM.minutes(mm));
                case BEVEL ->
                    Operation.of(
                                    SHAPE,
                                    BEVEL,
                                    join.pieceNames(),
                                    TEXTS.text("edge-operations.bevel-face-and-back", join.name()))
                            .taking(WorkRate.BEVEL_MM.minutes(2 * mm));
                case SAND ->
                    Operation.of(
                                    FINISH,
                                    SAND,
                                    join.pieceNames(),
                                    TEXTS.text("edge-operations.sand-smooth-and-round", join.name()))
                            .noting(TEXTS.text("edge-operations.wear-a-mask"))
                            .taking(WorkRate.SAND_MM.minutes(2 * mm));
                default ->
                    Operation.of(
                                    FINISH,
                                    BURNISH,
                                    join.pieceNames(),
                                    TEXTS.text("edge-operations.burnish-all-layers-as-one", join.name()))
                            .taking(WorkRate.BURNISH_MM.minutes(2 * mm));
            };
            if (treatment.step() == BURNISH) {
                smooth.add(work.add(Operation.of(
                                FINISH,
                                DYE,
                                join.pieceNames(),
                                TEXTS.text("edge-operations.dye-the-sewn-edge", join.name()))
                        .with(TEXTS.text("edge-operations.edge-dye-small-brush"), "")
                        .taking(5)
                        .thenWaiting(WaitingTimes.EDGE_DYE_DRIES_MIN)));
            }
            boolean beforeForming = operation.phase() == SHAPE;
            (beforeForming ? square : smooth).add(work.add(operation.with(treatment.tool(), treatment.size())));
        }
        if (!square.isEmpty()) {
            work.after(work.fixing(join.name()), square.get(0), TEXTS.text("edge-operations.the-layers-are-one-only"));
        }
        chain(square, TEXTS.text("edge-operations.flush-before-round"));
        chain(smooth, TEXTS.text("edge-operations.sanded-then-dyed-then-burnished"));
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
