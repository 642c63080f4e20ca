package weltwright.assembly;

import static weltwright.assembly.AssemblyText.and;
import static weltwright.assembly.AssemblyText.the;
import static weltwright.assembly.OperationKind.CASE;
import static weltwright.assembly.OperationKind.CUT;
import static weltwright.assembly.OperationKind.MARK;
import static weltwright.assembly.OperationKind.PUNCH;
import static weltwright.assembly.OperationKind.SKIVE;
import static weltwright.assembly.WorkPhase.HOLES;
import static weltwright.assembly.WorkPhase.JOIN;
import static weltwright.assembly.WorkPhase.PREPARE;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.stitch.IronPlacement;

/** Adds the operations on single pieces before they are joined: cut, mark, skive, punch, fold. */
final class PieceOperations {
    private static final Messages TEXTS = Messages.of(PieceOperations.class);

    /**
     * Thickness of 7 oz, less a rounding tolerance, from which leather cracks at a fold unless it is cased. Common
     * practice.
     */
    private static final double CASED_FROM_MM = 7 * 25.4 / 64 - 0.01;

    /** Lines that are marked, in the order in which they are told. */
    private static final List<Mark.Kind> MARKED = List.of(
            Mark.Kind.FOLD, Mark.Kind.STITCH_ROW, Mark.Kind.IRON, Mark.Kind.NOTCH, Mark.Kind.SKIVE, Mark.Kind.PLACE);

    private final OperationCollector work;

    PieceOperations(OperationCollector work) {
        this.work = work;
    }

    void all() {
        cut();
        mark();
        work.pattern.pieces().forEach(this::skive);
        work.pattern.pieces().forEach(piece -> {
            work.punches.put(piece.name(), new ArrayList<>());
            stitchHoles(piece);
        });
        roundHoles();
        fold();
    }

    /** Adds one cutting operation for all pieces of one thickness. */
    private void cut() {
        Map<String, List<Piece>> leathers = work.pattern.pieces().stream()
                .collect(Collectors.groupingBy(
                        piece -> TEXTS.text("piece-operations.leather-of", work.unit.format(piece.thicknessMm(), 1)),
                        LinkedHashMap::new,
                        Collectors.toList()));
        leathers.forEach((leather, pieces) -> {
            double mm = pieces.stream()
                    .mapToDouble(p -> p.count() * p.outline().lengthMm())
                    .sum();
            Operation cut = work.add(Operation.of(
                            PREPARE,
                            CUT,
                            names(pieces),
                            TEXTS.text(
                                    "piece-operations.cut",
                                    and(pieces.stream()
                                            .map(AssemblyText::layers)
                                            .toList())))
                    .with(TEXTS.text("piece-operations.knife-on-a-board"), leather)
                    .taking(WorkRate.CUT_MM.minutes(mm)));
            pieces.forEach(piece -> {
                work.cuts.put(piece.name(), cut);
                work.prepared.put(piece.name(), cut);
            });
        });
    }

    private void mark() {
        List<Piece> marked = work.pattern.pieces().stream()
                .filter(piece -> !lines(List.of(piece)).isEmpty())
                .toList();
        if (!marked.isEmpty()) {
            Operation mark = work.add(Operation.of(
                            PREPARE,
                            MARK,
                            names(marked),
                            TEXTS.text("piece-operations.mark-on-the-grain-side", lines(marked)))
                    .with(TEXTS.text("piece-operations.scratch-awl-folder"), "")
                    .taking(3.0 * marked.size()));
            marked.forEach(piece -> next(piece.name(), mark, TEXTS.text("piece-operations.the-marks-go-on-the")));
        }
        markForTheFleshSide();
    }

    /** Adds pricking of the holes that are punched from the flesh side, since the pattern lies on the grain side. */
    private void markForTheFleshSide() {
        Set<String> pieces = new LinkedHashSet<>();
        List<String> rows = new ArrayList<>();
        int holes = 0;
        for (Join join : work.joins) {
            for (int i = 0; i < join.layers().size() && join.seam().isPresent(); i++) {
                if (isPunchedFromTheFleshSide(join, i)) {
                    Seam.Layer layer = join.layers().get(i);
                    pieces.add(layer.piece());
                    rows.add(TEXTS.text("piece-operations.of-the-in-the", join.name(), where(layer)));
                    holes += layer.holes().size();
                }
            }
        }
        if (pieces.isEmpty()) {
            return;
        }
        Operation prick = work.add(Operation.of(
                        PREPARE,
                        MARK,
                        List.copyOf(pieces),
                        TEXTS.text("piece-operations.prick-the-holes-straight-through", and(rows)))
                .with(TEXTS.text("piece-operations.fine-awl"), "")
                .noting(TEXTS.text("piece-operations.or-make-no-holes-there"))
                .taking(WorkRate.PRICK_HOLES.minutes(holes)));
        pieces.forEach(piece -> next(piece, prick, TEXTS.text("piece-operations.the-pattern-lies-on-the")));
    }

    private static boolean isPunchedFromTheFleshSide(Join join, int layer) {
        return !join.isInside(layer) && !join.layers().get(layer).chiselled();
    }

    private static String where(Seam.Layer layer) {
        return layer.part() == LayerPart.WHOLE
                ? layer.piece()
                : layer.piece() + " (" + layer.part().words() + ")";
    }

    private void skive(Piece piece) {
        String name = piece.name();
        if (has(piece, Mark.Kind.SKIVE)) {
            next(
                    name,
                    work.add(Operation.of(
                                    PREPARE,
                                    SKIVE,
                                    List.of(name),
                                    TEXTS.text("piece-operations.skive-the-end-of-the", name))
                            .with(TEXTS.text("piece-operations.skiving-knife"), "")
                            .taking(3.0 * piece.count())),
                    TEXTS.text("piece-operations.it-is-skived-from-the"));
        }
        if (piece.kind() == Piece.Kind.RIVET_COVER) {
            next(
                    name,
                    work.add(Operation.of(
                                    PREPARE,
                                    SKIVE,
                                    List.of(name),
                                    TEXTS.text("piece-operations.skive-the-thin-all-round", name))
                            .with(TEXTS.text("piece-operations.skiving-knife"), "")
                            .taking(3)),
                    TEXTS.text("piece-operations.it-is-skived-once-it"));
        }
    }

    private void next(String piece, Operation operation, String why) {
        work.after(work.prepared(piece), operation, why);
        work.prepared.put(piece, operation);
    }

    private static List<String> names(List<Piece> pieces) {
        return pieces.stream().map(Piece::name).toList();
    }

    private static String lines(List<Piece> pieces) {
        return and(MARKED.stream()
                .filter(kind -> pieces.stream().anyMatch(piece -> has(piece, kind)))
                .map(kind -> TEXTS.text("piece-operations.marked." + kind))
                .toList());
    }

    private static boolean has(Piece piece, Mark.Kind kind) {
        return piece.marks().stream().anyMatch(mark -> mark.kind() == kind);
    }

    /**
     * Adds punching of stitch holes. Teeth of irons are slanted, so the back layer is struck from its flesh side for
     * the slants to match.
     */
    private void stitchHoles(Piece piece) {
        for (Join join : work.joins) {
            if (join.seam().isEmpty()) {
                continue;
            }
            join.layersOf(piece).forEach(i -> {
                Seam.Layer layer = join.layers().get(i);
                String side = join.isInside(i)
                        ? (piece.count() == 1
                                ? TEXTS.text("piece-operations.from-the-side-towards-the", struckFrom(join))
                                : TEXTS.text("piece-operations.each-of-them-from-the", struckFrom(join)))
                        : layer.chiselled()
                                ? TEXTS.text("piece-operations.from-the-grain-side")
                                : TEXTS.text("piece-operations.from-the-flesh-side");
                String irons = layer.chiselled()
                        ? ": " + irons(layer.holes(), join.seam().get().closed())
                        : "";
                punched(
                        piece,
                        work.add(Operation.of(
                                        HOLES,
                                        PUNCH,
                                        List.of(piece.name()),
                                        TEXTS.text(
                                                "piece-operations.punch-holes-of-the-in",
                                                layer.holes().size(),
                                                join.name(),
                                                where(layer),
                                                side,
                                                irons))
                                .with(
                                        TEXTS.text("piece-operations.pricking-iron-or-chisel"),
                                        pitch(join.seam().get().pitchMm()))
                                .taking(WorkRate.PUNCH_HOLES.minutes(
                                        piece.count() * layer.holes().size()))));
            });
        }
    }

    /** Returns the name of the outer layer that is struck from its outside: "face half". */
    private static String struckFrom(Join join) {
        Seam.Layer face =
                join.layers().stream().filter(Seam.Layer::chiselled).findFirst().orElseThrow();
        return face.part() == LayerPart.WHOLE ? face.piece() : face.part().words();
    }

    private void punched(Piece piece, Operation punch) {
        work.after(work.prepared(piece.name()), punch, TEXTS.text("piece-operations.the-holes-stand-where-they"));
        work.punches(piece.name()).add(punch);
        work.doneFlat(piece.name(), punch);
    }

    /** Words how often irons of each number of teeth are set. */
    private static String irons(List<Point> holes, boolean closed) {
        Map<Integer, Long> settings = IronPlacement.of(holes, closed).stream()
                .collect(Collectors.groupingBy(
                        IronPlacement.Step::teeth,
                        () -> new TreeMap<>(Comparator.reverseOrder()),
                        Collectors.counting()));
        return and(settings.entrySet().stream()
                .map(entry -> TEXTS.text(
                        entry.getValue() == 1 ? "piece-operations.teeth-once" : "piece-operations.teeth-times",
                        entry.getKey(),
                        entry.getValue()))
                .toList());
    }

    /**
     * Adds one punching operation for all round holes of one use and size, except those whose place is found with the
     * knife in the sheath.
     */
    private void roundHoles() {
        record Alike(Hole.Use use, double diameterMm) {}
        Map<Alike, Map<Piece, Integer>> round = new LinkedHashMap<>();
        for (Piece piece : work.pattern.pieces()) {
            for (Hole hole : piece.holes()) {
                if (hole.use() != Hole.Use.STITCH && !work.isSetOnTheKnife(piece, hole)) {
                    round.computeIfAbsent(new Alike(hole.use(), hole.diameterMm()), key -> new LinkedHashMap<>())
                            .merge(piece, 1, Integer::sum);
                }
            }
        }
        round.forEach((alike, pieces) -> {
            int count = pieces.values().stream().mapToInt(Integer::intValue).sum();
            List<String> names = pieces.keySet().stream().map(Piece::name).toList();
            Operation punch = work.add(Operation.of(
                            HOLES,
                            PUNCH,
                            names,
                            TEXTS.text(
                                    (count == 1 ? "piece-operations.punch-one." : "piece-operations.punch-several.")
                                            + alike.use(),
                                    the(names),
                                    count))
                    .with(TEXTS.text("piece-operations.round-punch"), EdgeToolSizes.inBothUnits(alike.diameterMm()))
                    .taking(1 + count / 2.0));
            pieces.keySet().forEach(piece -> punched(piece, punch));
        });
    }

    /** Adds casing and bending of thick folded pieces, which dry in that shape before they are glued. */
    private void fold() {
        List<String> folded = work.pattern.pieces().stream()
                .filter(piece -> has(piece, Mark.Kind.FOLD) && piece.thicknessMm() >= CASED_FROM_MM)
                .map(Piece::name)
                .toList();
        if (folded.isEmpty()) {
            return;
        }
        Operation fold = work.add(
                Operation.of(JOIN, CASE, folded, TEXTS.text("piece-operations.case-along-the-folds-bend", the(folded)))
                        .with(TEXTS.text("piece-operations.sponge-water-folder"), "")
                        .noting(TEXTS.text("piece-operations.cased-damped-and-left-until"))
                        .taking(5.0 * folded.size())
                        .thenWaiting(WaitingTimes.FOLD_DRIES_MIN));
        folded.forEach(piece -> work.folds.put(piece, fold));
    }

    private static String pitch(double mm) {
        return TEXTS.text("piece-operations.mm-in", mm, 25.4 / mm);
    }
}
