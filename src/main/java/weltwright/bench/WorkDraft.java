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
import java.util.stream.Stream;
import weltwright.sheath.Fastening;
import weltwright.sheath.Hardware;
import weltwright.sheath.Hole;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;
import weltwright.sheath.Seam;

/**
 * The operations that a pattern asks for, and what each has to wait for. All follows from its pieces, its joins and its
 * edges; in which order the operations are named here does not matter to the constraints.
 */
final class WorkDraft {
    private static final String SEWN_EDGE = "sewn edge of the ";

    private final Pattern pattern;
    private final List<Join> joins;
    private final List<Edge> edges;
    private final List<Operation> operations = new ArrayList<>();
    private final Set<Constraint> constraints = new LinkedHashSet<>();

    /** By piece: its cut; the last that has to be done before a hole is made or it is joined; its holes. */
    private final Map<String, Operation> cuts = new LinkedHashMap<>();

    private final Map<String, Operation> prepared = new LinkedHashMap<>();
    private final Map<String, List<Operation>> punches = new LinkedHashMap<>();

    /** By join: what closes it, glue or rivets; what makes it last, stitches or rivets. */
    private final Map<String, Operation> closings = new LinkedHashMap<>();

    private final Map<String, Operation> fixings = new LinkedHashMap<>();

    private WorkDraft(Pattern pattern, List<Edge> edges) {
        this.pattern = pattern;
        this.joins = Join.of(pattern);
        this.edges = edges;
    }

    static OrderOfWork order(Pattern pattern, List<Edge> edges) {
        WorkDraft draft = new WorkDraft(pattern, edges);
        pattern.pieces().forEach(draft::cutMarkAndPunch);
        draft.joins.stream().filter(join -> join.seam().isPresent()).forEach(draft::glueAndStitch);
        pattern.fastenings().forEach(draft::setHardware);
        draft.patchesBeforeWhatClosesOverThem();
        List<Operation> single = draft.singleEdges();
        List<Operation> sewn = draft.joins.stream()
                .filter(Join::stack)
                .flatMap(join -> draft.sewnEdges(join).stream())
                .toList();
        draft.formAndFinish(single, sewn);
        return OrderOfWork.of(draft.operations, draft.constraints);
    }

    private void cutMarkAndPunch(Piece piece) {
        String name = piece.name();
        Operation cut = add(
                Step.CUT,
                piece.count() == 1 ? "Cut the " + name : "Cut " + piece.count() + " of the " + name,
                name,
                "knife, on a board",
                Words.text("leather of %.1f mm", piece.thicknessMm()));
        cuts.put(name, cut);
        prepared.put(name, cut);
        String lines = lines(piece);
        if (!lines.isEmpty()) {
            next(name, add(Step.MARK, "Mark on the " + name + ": " + lines, name, "scratch awl, folder", ""),
                    "the marks go on the cut leather");
        }
        if (has(piece, Mark.Kind.SKIVE)) {
            next(name, add(Step.SKIVE, "Skive the end of the " + name + " to nothing", name, "skiving knife", ""),
                    "it is pared down from the mark on");
        }
        List<Operation> punched = new ArrayList<>(stitchHoles(piece));
        punched.addAll(roundHoles(piece));
        punched.forEach(punch -> after(prepared.get(name), punch, "the holes stand where they are marked"));
        punches.put(name, punched);
    }

    private void next(String piece, Operation operation, String why) {
        after(prepared.get(piece), operation, why);
        prepared.put(piece, operation);
    }

    private static String lines(Piece piece) {
        Map<Mark.Kind, String> words = new LinkedHashMap<>();
        words.put(Mark.Kind.FOLD, "the folds");
        words.put(Mark.Kind.STITCH_ROW, "the stitch row");
        words.put(Mark.Kind.IRON, "where the irons are set");
        words.put(Mark.Kind.NOTCH, "the notches");
        words.put(Mark.Kind.SKIVE, "where it is skived");
        words.put(Mark.Kind.PLACE, "where other leather is laid on");
        return Words.and(words.entrySet().stream()
                .filter(entry -> has(piece, entry.getKey()))
                .map(Map.Entry::getValue)
                .toList());
    }

    private static boolean has(Piece piece, Mark.Kind kind) {
        return piece.marks().stream().anyMatch(mark -> mark.kind() == kind);
    }

    /** Irons lean; so a layer through which they come out is struck from its other side, that the slants meet. */
    private List<Operation> stitchHoles(Piece piece) {
        List<Operation> punched = new ArrayList<>();
        for (Join join : joins) {
            if (join.seam().isEmpty()) {
                continue;
            }
            join.layersOf(piece).forEach(i -> {
                Seam.Layer layer = join.layers().get(i);
                String where = piece.name() + (layer.part().isEmpty() ? "" : ", " + layer.part());
                String side = join.isInside(i)
                        ? piece.count() == 1 ? "" : ", in each of them"
                        : layer.chiselled() ? ", from the grain side" : ", from the flesh side";
                punched.add(add(
                        Step.PUNCH,
                        "Punch %d holes of the %s in the %s%s".formatted(layer.holes().size(), join.name(), where, side),
                        piece.name(),
                        "pricking iron or chisel",
                        pitch(join.seam().get().pitchMm())));
            });
        }
        return punched;
    }

    private List<Operation> roundHoles(Piece piece) {
        record Alike(Hole.Use use, double diameterMm) {}
        Map<Alike, Long> round = piece.holes().stream()
                .filter(hole -> hole.use() != Hole.Use.STITCH)
                .collect(Collectors.groupingBy(
                        hole -> new Alike(hole.use(), hole.diameterMm()), LinkedHashMap::new, Collectors.counting()));
        List<Operation> punched = new ArrayList<>();
        round.forEach((alike, count) -> {
            String use = switch (alike.use()) {
                case DRAIN -> "drain";
                case RIVET -> "rivet";
                case SNAP -> "snap";
                case STITCH -> throw new IllegalStateException("a stitch is no round hole");
            };
            punched.add(add(
                    Step.PUNCH,
                    count == 1
                            ? "Punch the %s hole in the %s".formatted(use, piece.name())
                            : "Punch the %d %s holes in the %s".formatted(count, use, piece.name()),
                    piece.name(),
                    "round punch",
                    EdgeTools.both(alike.diameterMm())));
        });
        return punched;
    }

    private static String pitch(double mm) {
        return Words.text("%.2f mm, %.1f to the inch", mm, 25.4 / mm);
    }

    private void glueAndStitch(Join join) {
        Seam seam = join.seam().orElseThrow();
        Operation glue = add(Step.GLUE, Gluing.of(join), join.pieceNames(), "contact cement", "");
        Operation stitch = add(
                Step.STITCH,
                "Sew the %s: %d stitches, and %d back at each end"
                        .formatted(join.name(), seam.stitchCount(), seam.backStitches()),
                join.pieceNames(),
                "two needles, awl",
                Words.text("thread of %.1f m", new SaddleStitch(seam).metresToCut()));
        join(join.name(), join.pieceNames(), glue, "the holes are punched while the leather lies flat");
        fixings.put(join.name(), stitch);
        after(glue, stitch, "glue holds the holes over one another");
    }

    private void setHardware(Fastening fastening) {
        List<String> names = fastening.layers().stream().map(Seam.Layer::piece).distinct().toList();
        String on = Words.and(names.stream().map(name -> "the " + name).toList());
        Operation operation = switch (fastening.kind()) {
            case RIVET -> add(
                    Step.RIVET,
                    "Set the %s through %s".formatted(counted(fastening), on),
                    names,
                    "setter, anvil",
                    Words.text("through %.1f mm", fastening.stackMm()));
            case SNAP -> add(Step.RIVET, "Set the halves of the %s in %s".formatted(fastening.name(), on), names,
                    "snap setter", "");
            case EYELET -> add(
                    Step.RIVET, "Set the %s in %s".formatted(counted(fastening), on), names, "eyelet setter", "");
            case RING -> add(Step.RIVET, "Put the ring into %s".formatted(on), names, "by hand",
                    fastening.hardware().name());
        };
        join(fastening.name(), names, operation, "the post needs its hole");
        fixings.put(fastening.name(), operation);
    }

    private static String counted(Fastening fastening) {
        return fastening.count() == 1 ? fastening.name() : fastening.count() + " " + fastening.name();
    }

    private void join(String name, List<String> pieces, Operation closing, String whyPunched) {
        closings.put(name, closing);
        for (String piece : pieces) {
            after(cuts.get(piece), closing, "what is not cut cannot be joined");
            after(prepared.get(piece), closing, "the marks say where it is laid");
            punches.get(piece).forEach(punch -> after(punch, closing, whyPunched));
        }
    }

    /**
     * Neither needle nor anvil gets behind the outer layers of a closed stack, or between a piece and its own folded end; and
     * a ring goes into a strap before the strap is closed.
     */
    private void patchesBeforeWhatClosesOverThem() {
        for (Fastening fastening : pattern.fastenings()) {
            for (Join join : joins) {
                boolean shared = fastening.layers().stream().anyMatch(layer -> join.joins(layer.piece()));
                boolean closesOver = join.stack() || join.seam().isPresent() && join.fold().isPresent();
                if (shared && (closesOver || fastening.kind() == Hardware.Kind.RING)) {
                    after(
                            fixings.get(fastening.name()),
                            closings.get(join.name()),
                            "it cannot be got at once the " + join.name() + " is closed");
                }
            }
        }
        for (Join patch : joins) {
            for (Join stack : joins) {
                if (!patch.stack() && stack.stack() && patch.pieceNames().stream().anyMatch(stack::joins)) {
                    after(
                            fixings.get(patch.name()),
                            closings.get(stack.name()),
                            "no needle gets inside once the " + stack.name() + " is closed");
                }
            }
        }
    }

    /** Grooves, bevels and burnishes the edges of single leather, and grooves the rows that stitches lie in. */
    private List<Operation> singleEdges() {
        List<Operation> all = new ArrayList<>();
        for (Piece piece : pattern.pieces()) {
            Map<Edge, List<Operation>> done = new LinkedHashMap<>();
            for (Step step : List.of(Step.GROOVE, Step.BEVEL, Step.BURNISH)) {
                Predicate<Edge> now = edge -> edge.state() != EdgeState.SEWN || step == Step.GROOVE;
                groups(piece, step, now).forEach((treatment, alike) -> {
                    Operation operation = onEdges(piece.name(), treatment, alike);
                    after(cuts.get(piece.name()), operation, "there is no edge before the cut");
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
        edges.stream()
                .filter(edge -> edge.piece().equals(piece.name()) && now.test(edge))
                .forEach(edge -> edge.treatments().stream()
                        .filter(treatment -> treatment.step() == step)
                        .forEach(treatment ->
                                groups.computeIfAbsent(treatment, key -> new ArrayList<>()).add(edge)));
        return groups;
    }

    private Operation onEdges(String piece, Treatment treatment, List<Edge> on) {
        boolean allRound = edges.stream()
                .filter(edge -> edge.piece().equals(piece))
                .allMatch(edge -> edge.state() != EdgeState.SEWN && on.contains(edge));
        List<String> names = on.stream()
                .map(Edge::name)
                .distinct()
                .map(name -> named(on.stream().filter(edge -> edge.name().equals(name)).toList()))
                .toList();
        String where = (allRound ? "the edges" : Words.and(names)) + " of the " + piece;
        String work = switch (treatment.step()) {
            case GROOVE -> "Groove %s, on the grain side".formatted(where);
            case BEVEL -> "Bevel %s, %s".formatted(where, treatment.side().words());
            default -> "Burnish %s".formatted(where);
        };
        boolean before = on.stream().anyMatch(Edge::finishedBeforeAssembly);
        return add(treatment.step(), work, List.of(piece), treatment.tool(), treatment.size(), before);
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
            after(
                    done.get(i),
                    done.get(i + 1),
                    done.get(i + 1).step() == Step.BEVEL
                            ? "the groover runs along a square edge"
                            : "an edge is burnished round");
        }
        Optional<Join> join = joins.stream()
                .filter(candidate -> edge.join().equals(Optional.of(candidate.name())))
                .findFirst();
        boolean alongStitches = edge.state() == EdgeState.SEWN || join.map(j -> !j.stack()).orElse(false);
        for (Operation operation : done) {
            if (operation.step() == Step.GROOVE) {
                after(prepared.get(edge.piece()), operation, "the row is marked first");
                if (alongStitches) {
                    punches.get(edge.piece())
                            .forEach(punch -> after(operation, punch, "the chisel stands in the groove"));
                }
            }
            join.map(j -> closings.get(j.name())).ifPresent(closing ->
                    after(operation, closing, "out of reach once the " + edge.join().get() + " is closed"));
        }
    }

    /** Trims, bevels and burnishes the edge of a sewn stack, as one. */
    private List<Operation> sewnEdges(Join join) {
        List<Edge> sewn = edges.stream()
                .filter(edge -> edge.state() == EdgeState.SEWN && edge.join().equals(Optional.of(join.name())))
                .toList();
        List<Operation> done = new ArrayList<>();
        Operation last = fixings.get(join.name());
        for (Step step : List.of(Step.TRIM, Step.BEVEL, Step.BURNISH)) {
            Set<Treatment> treatments = sewn.stream()
                    .flatMap(edge -> edge.treatments().stream())
                    .filter(treatment -> treatment.step() == step)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            for (Treatment treatment : treatments) {
                String work = switch (step) {
                    case TRIM -> "Trim and sand the " + SEWN_EDGE + join.name() + " flush";
                    case BEVEL -> "Bevel the " + SEWN_EDGE + join.name() + ", face and back";
                    default -> "Burnish the " + SEWN_EDGE + join.name() + ", all layers as one";
                };
                Operation operation = add(step, work, join.pieceNames(), treatment.tool(), treatment.size(), false);
                after(last, operation, step == Step.TRIM ? "the layers are one only when sewn" : "flush before round");
                last = operation;
                done.add(operation);
            }
        }
        return done;
    }

    private void formAndFinish(List<Operation> single, List<Operation> sewn) {
        List<String> all = pattern.pieces().stream().map(Piece::name).toList();
        Operation form = add(
                Step.FORM,
                "Damp the sheath and form it to the knife, its edge and point taped; let it dry for a day",
                all,
                "water, bone folder",
                "");
        Operation finish = add(
                Step.FINISH,
                "Dye if it is wanted, then oil and wax; test how the knife is held before it is worn",
                all,
                "dye, oil, wax",
                "");
        fixings.values().forEach(fixing -> after(fixing, form, "the seams must hold it in shape"));
        sewn.forEach(edge -> after(edge, form, "sanding would scratch the formed leather"));
        after(form, finish, "oil and wax keep the water out");
        Stream.concat(single.stream(), sewn.stream())
                .forEach(edge -> after(edge, finish, "wax closes the edge"));
        prepared.values().forEach(cut -> after(cut, form, "all pieces are there"));
        punches.values().forEach(holes -> holes.forEach(hole -> after(hole, form, "wet leather tears at the punch")));
    }

    private Operation add(Step step, String work, String piece, String tool, String size) {
        return add(step, work, List.of(piece), tool, size, false);
    }

    private Operation add(Step step, String work, List<String> pieces, String tool, String size) {
        return add(step, work, pieces, tool, size, false);
    }

    private Operation add(Step step, String work, List<String> pieces, String tool, String size, boolean before) {
        Operation operation = new Operation(step, work, pieces, tool, size, before);
        operations.add(operation);
        return operation;
    }

    private void after(Operation before, Operation after, String why) {
        constraints.add(new Constraint(before, after, why));
    }
}
