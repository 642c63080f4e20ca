package weltwright.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import weltwright.geometry.Point;
import weltwright.sheath.Hole;
import weltwright.sheath.IronSteps;
import weltwright.sheath.Mark;
import weltwright.sheath.Piece;
import weltwright.sheath.Seam;

/** What is done to each piece by itself before it is joined: cut, mark, skive, punch. */
final class PieceWork {
    private final Work work;

    PieceWork(Work work) {
        this.work = work;
    }

    void cutMarkAndPunch(Piece piece) {
        String name = piece.name();
        Operation cut = work.add(
                Step.CUT,
                piece.count() == 1 ? "Cut the " + name : "Cut " + piece.count() + " of the " + name,
                name,
                "knife, on a board",
                Words.text("leather of %.1f mm", piece.thicknessMm()));
        work.cuts.put(name, cut);
        work.prepared.put(name, cut);
        String lines = lines(piece);
        if (!lines.isEmpty()) {
            next(name, work.add(Step.MARK, "Mark on the " + name + ": " + lines, name, "scratch awl, folder", ""),
                    "the marks go on the cut leather");
        }
        if (has(piece, Mark.Kind.SKIVE)) {
            next(name, work.add(Step.SKIVE, "Skive the end of the " + name + " to nothing", name, "skiving knife", ""),
                    "it is pared down from the mark on");
        }
        List<Operation> punched = new ArrayList<>(stitchHoles(piece));
        punched.addAll(roundHoles(piece));
        punched.forEach(punch -> work.after(work.prepared.get(name), punch, "the holes stand where they are marked"));
        work.punches.put(name, punched);
    }

    private void next(String piece, Operation operation, String why) {
        work.after(work.prepared.get(piece), operation, why);
        work.prepared.put(piece, operation);
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
        for (Join join : work.joins) {
            if (join.seam().isEmpty()) {
                continue;
            }
            join.layersOf(piece).forEach(i -> {
                Seam.Layer layer = join.layers().get(i);
                String where = piece.name() + (layer.part().isEmpty() ? "" : ", " + layer.part());
                String side = join.isInside(i)
                        ? piece.count() == 1 ? "" : ", in each of them"
                        : layer.chiselled() ? ", from the grain side" : ", from the flesh side";
                String irons = layer.chiselled() ? ": " + irons(layer.holes(), join.seam().get().closed()) : "";
                punched.add(work.add(
                        Step.PUNCH,
                        String.format(Locale.ROOT, "Punch %d holes of the %s in the %s%s%s",
                                layer.holes().size(), join.name(), where, side, irons),
                        piece.name(),
                        "pricking iron or chisel",
                        pitch(join.seam().get().pitchMm())));
            });
        }
        return punched;
    }

    /** How often an iron of which number of teeth is set. */
    private static String irons(List<Point> holes, boolean closed) {
        Map<Integer, Long> settings = IronSteps.of(holes, closed).stream()
                .collect(Collectors.groupingBy(
                        IronSteps.Step::teeth, () -> new TreeMap<>(Comparator.reverseOrder()), Collectors.counting()));
        return Words.and(settings.entrySet().stream()
                .map(entry -> String.format(Locale.ROOT, "%d teeth %s",
                        entry.getKey(), entry.getValue() == 1 ? "once" : entry.getValue() + " times"))
                .toList());
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
            punched.add(work.add(
                    Step.PUNCH,
                    count == 1
                            ? String.format(Locale.ROOT, "Punch the %s hole in the %s", use, piece.name())
                            : String.format(Locale.ROOT, "Punch the %d %s holes in the %s", count, use, piece.name()),
                    piece.name(),
                    "round punch",
                    EdgeTools.both(alike.diameterMm())));
        });
        return punched;
    }

    private static String pitch(double mm) {
        return Words.text("%.2f mm, %.1f to the inch", mm, 25.4 / mm);
    }
}
