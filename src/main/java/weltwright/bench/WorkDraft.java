package weltwright.bench;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import weltwright.measure.Length;
import weltwright.sheath.Hole;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/**
 * The operations that a pattern asks for, and what each has to wait for. All follows from its pieces, its joins and its
 * edges; in which order the operations are named here does not matter to the constraints.
 */
final class WorkDraft {
    private final Pattern pattern;
    private final List<Join> joins;
    private final List<Edge> edges;
    private final List<Operation> operations = new ArrayList<>();
    private final Set<Constraint> constraints = new LinkedHashSet<>();

    private final Map<String, Operation> cuts = new LinkedHashMap<>();
    private final Map<String, Operation> marks = new LinkedHashMap<>();
    private final Map<String, List<Operation>> punches = new LinkedHashMap<>();
    private final Map<String, Operation> glues = new LinkedHashMap<>();
    private final Map<String, Operation> stitches = new LinkedHashMap<>();

    private WorkDraft(Pattern pattern, List<Edge> edges) {
        this.pattern = pattern;
        this.joins = Join.of(pattern);
        this.edges = edges;
    }

    static OrderOfWork order(Pattern pattern, List<Edge> edges) {
        WorkDraft draft = new WorkDraft(pattern, edges);
        pattern.pieces().forEach(draft::cutMarkAndPunch);
        draft.joins.forEach(draft::glueAndStitch);
        draft.patchesBeforeTheStacksThatCloseOverThem();
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
        String lines = lines(piece);
        if (!lines.isEmpty()) {
            Operation mark = add(Step.MARK, "Mark on the " + name + ": " + lines, name, "scratch awl, folder", "");
            after(cut, mark, "the marks go on the cut leather");
            marks.put(name, mark);
        }
        List<Operation> here = new ArrayList<>();
        joins.stream().filter(join -> join.joins(name)).forEach(join -> {
            int count = join.seam().holeCount() * (int) join.layersOf(piece).count();
            here.add(add(
                    Step.PUNCH,
                    "Punch %d holes of the %s in the %s%s"
                            .formatted(count, join.name(), name, piece.count() == 1 ? "" : ", in each of them"),
                    name,
                    "pricking iron or chisel",
                    pitch(join.seam().pitchMm())));
        });
        Map<Double, Long> round = piece.holes().stream()
                .filter(hole -> hole.use() != Hole.Use.STITCH)
                .collect(Collectors.groupingBy(Hole::diameterMm, TreeMap::new, Collectors.counting()));
        round.forEach((diameter, count) -> here.add(add(
                Step.PUNCH,
                count == 1
                        ? "Punch the round hole in the " + name
                        : "Punch the " + count + " round holes in the " + name,
                name,
                "round punch",
                new Length(diameter).inMillimetres())));
        here.forEach(punch -> after(marks.getOrDefault(name, cut), punch, "the holes stand where they are marked"));
        punches.put(name, here);
    }

    private static String lines(Piece piece) {
        Map<Mark.Kind, String> words = new LinkedHashMap<>();
        words.put(Mark.Kind.FOLD, "the folds");
        words.put(Mark.Kind.STITCH_ROW, "the stitch row");
        words.put(Mark.Kind.NOTCH, "the notches");
        words.put(Mark.Kind.PLACE, "where other leather is laid on");
        return words.entrySet().stream()
                .filter(entry -> piece.marks().stream().anyMatch(mark -> mark.kind() == entry.getKey()))
                .map(Map.Entry::getValue)
                .collect(Collectors.joining(", "));
    }

    private void glueAndStitch(Join join) {
        List<String> names = join.pieces().stream().map(Piece::name).distinct().toList();
        Operation glue = add(Step.GLUE, gluing(join, names), names, "contact cement", "");
        Operation stitch = add(
                Step.STITCH,
                "Sew the %s: %d stitches with a saddle stitch".formatted(join.name(), SaddleStitch.of(join.seam()).stitches()),
                names,
                "two needles, awl",
                Words.text("thread of %.2f m", SaddleStitch.of(join.seam()).threadMm() / 1000));
        glues.put(join.name(), glue);
        stitches.put(join.name(), stitch);
        for (String name : names) {
            after(cuts.get(name), glue, "what is not cut cannot be glued");
            after(marks.getOrDefault(name, cuts.get(name)), glue, "the marks say where it is laid");
            punches.get(name).forEach(punch -> after(punch, glue, "the holes are punched while the leather lies flat"));
        }
        after(glue, stitch, "glue holds the holes over one another");
    }

    private static String gluing(Join join, List<String> names) {
        if (!join.stack()) {
            return names.size() == 1
                    ? "Fold the %s back and glue its end down".formatted(join.name())
                    : "Glue the %s to the %s".formatted(
                            join.pieces().get(join.upper()).name(),
                            join.pieces().get(join.pieces().size() - 1 - join.upper()).name());
        }
        List<Piece> inside = new ArrayList<>();
        for (int i = 0; i < join.pieces().size(); i++) {
            if (join.isInside(i)) {
                inside.add(join.pieces().get(i));
            }
        }
        String back = join.pieces().get(join.pieces().size() - 1).name();
        String face = join.pieces().get(0).name();
        String close = face.equals(back)
                ? "fold the %s over".formatted(face)
                : "lay the %s on".formatted(face);
        String welts = inside.stream()
                .map(piece -> (piece.count() == 1 ? "the " : "the " + piece.count() + " layers of ") + piece.name())
                .collect(Collectors.joining(" and "));
        return welts.isEmpty()
                ? "Glue the edges of the %s, and %s, notch on notch".formatted(back, close)
                : "Glue %s to the %s, and %s, notch on notch".formatted(welts, back, close);
    }

    /** Once a stack is closed, neither needle nor anvil gets behind its outer layers. */
    private void patchesBeforeTheStacksThatCloseOverThem() {
        for (Join patch : joins) {
            for (Join stack : joins) {
                if (!patch.stack() && stack.stack() && patch.pieces().stream().anyMatch(p -> stack.joins(p.name()))) {
                    after(
                            stitches.get(patch.name()),
                            glues.get(stack.name()),
                            "no needle gets inside once the " + stack.name() + " is closed");
                }
            }
        }
    }

    /** Grooves, bevels and burnishes the edges of single leather, and the grooves that stitches lie in. */
    private List<Operation> singleEdges() {
        List<Operation> burnished = new ArrayList<>();
        for (Piece piece : pattern.pieces()) {
            Map<Edge, List<Operation>> done = new LinkedHashMap<>();
            for (Step step : List.of(Step.GROOVE, Step.BEVEL, Step.BURNISH)) {
                Predicate<Edge> now = edge -> edge.state() != EdgeState.SEWN || step == Step.GROOVE;
                for (Map.Entry<Treatment, List<Edge>> group : groups(piece, step, now).entrySet()) {
                    Operation operation = onEdges(piece.name(), group.getKey(), group.getValue());
                    after(cuts.get(piece.name()), operation, "there is no edge before the cut");
                    group.getValue().forEach(edge ->
                            done.computeIfAbsent(edge, key -> new ArrayList<>()).add(operation));
                }
            }
            done.forEach(this::constrainEdge);
            done.values().forEach(burnished::addAll);
        }
        return burnished;
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
        List<String> names = on.stream()
                .map(Edge::name)
                .distinct()
                .map(name -> named(on.stream().filter(edge -> edge.name().equals(name)).toList()))
                .toList();
        String work = switch (treatment.step()) {
            case GROOVE -> "Groove %s of the %s, on the grain side".formatted(Words.and(names), piece);
            case BEVEL -> "Bevel %s of the %s, %s".formatted(Words.and(names), piece, treatment.side().words());
            default -> "Burnish %s of the %s".formatted(Words.and(names), piece);
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
        for (Operation operation : done) {
            if (operation.step() == Step.GROOVE) {
                after(marks.getOrDefault(edge.piece(), cuts.get(edge.piece())), operation, "the row is marked first");
                punches.get(edge.piece()).stream()
                        .filter(punch -> edge.state() == EdgeState.SEWN || edge.name().startsWith("end of"))
                        .forEach(punch -> after(operation, punch, "the chisel stands in the groove"));
            }
            edge.join().map(glues::get).ifPresent(glue ->
                    after(operation, glue, "out of reach once the " + edge.join().get() + " is closed"));
        }
    }

    /** Trims, bevels and burnishes the edge of a sewn stack, as one. */
    private List<Operation> sewnEdges(Join join) {
        List<Edge> sewn = edges.stream()
                .filter(edge -> edge.state() == EdgeState.SEWN && edge.join().equals(Optional.of(join.name())))
                .filter(edge -> !edge.treatments().isEmpty())
                .toList();
        List<String> names = join.pieces().stream().map(Piece::name).distinct().toList();
        List<Operation> done = new ArrayList<>();
        Operation last = stitches.get(join.name());
        for (Step step : List.of(Step.TRIM, Step.BEVEL, Step.BURNISH)) {
            Set<Treatment> treatments = sewn.stream()
                    .flatMap(edge -> edge.treatments().stream())
                    .filter(treatment -> treatment.step() == step)
                    .collect(Collectors.toCollection(LinkedHashSet::new));
            for (Treatment treatment : treatments) {
                String work = switch (step) {
                    case TRIM -> "Trim and sand the sewn edge of the %s flush".formatted(join.name());
                    case BEVEL -> "Bevel the sewn edge of the %s, face and back".formatted(join.name());
                    default -> "Burnish the sewn edge of the %s, all layers as one".formatted(join.name());
                };
                Operation operation = add(step, work, names, treatment.tool(), treatment.size(), false);
                after(last, operation, step == Step.TRIM ? "the layers are one only when sewn" : "flush before round");
                last = operation;
                done.add(operation);
            }
        }
        return done;
    }

    private void formAndFinish(Collection<Operation> single, Collection<Operation> sewn) {
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
        stitches.values().forEach(stitch -> after(stitch, form, "the seams must hold it in shape"));
        sewn.forEach(edge -> after(edge, form, "sanding would scratch the formed leather"));
        after(form, finish, "oil and wax keep the water out");
        Stream.concat(single.stream(), sewn.stream())
                .forEach(edge -> after(edge, finish, "wax closes the edge"));
        cuts.values().forEach(cut -> after(cut, form, "all pieces are there"));
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

    private static String pitch(double mm) {
        return Words.text("%.2f mm, %.1f to the inch", mm, 25.4 / mm);
    }
}
