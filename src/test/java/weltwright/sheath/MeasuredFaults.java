package weltwright.sheath;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.SheathSpec;
import weltwright.wording.AdviceWording;

/**
 * What is wrong with a pattern, measured anew from its points in plain arithmetic: it shares no code with the check
 * that the program itself does.
 */
public final class MeasuredFaults {
    /** An outline is made of chords, and simplified by thousandths. */
    private static final double CHORDS_MM = 0.1;

    /** Of leather between a punched hole and a cut. Common practice; no source. */
    private static final double BESIDE_PUNCHED_MM = 2.4;

    private final SheathSpec spec;
    private final Pattern pattern;
    private final List<String> faults = new ArrayList<>();

    private MeasuredFaults(Pattern pattern, SheathSpec spec) {
        this.pattern = pattern;
        this.spec = spec;
    }

    /** In words; none where it is as it must be. */
    public static List<String> of(Pattern pattern, SheathSpec spec) {
        MeasuredFaults measured = new MeasuredFaults(pattern, spec);
        measured.names();
        pattern.pieces().forEach(measured::piece);
        pattern.seams().forEach(measured::seam);
        pattern.fastenings().stream()
                .filter(fastening -> fastening.kind() == Hardware.Kind.RIVET)
                .forEach(fastening -> measured.congruent(fastening.name(), fastening.layers()));
        return measured.faults;
    }

    private void names() {
        Set<String> seen = new HashSet<>();
        pattern.pieces().stream()
                .map(Piece::name)
                .filter(name -> !seen.add(name))
                .forEach(name -> fault("two pieces are called %s", name));
    }

    private void piece(Piece piece) {
        List<Point> ring = piece.outline().points();
        if (!piece.outline().closed() || !(area(ring) > 0)) {
            fault("the %s does not run counter-clockwise", piece.name());
        }
        if (!piece.outline().polygon().isValid()
                || !piece.outline().lineString().isSimple()) {
            fault("the cut of the %s crosses itself", piece.name());
        }
        for (Hole hole : piece.holes()) {
            double inside = inside(hole.centre(), ring);
            double wanted =
                    hole.use() == Hole.Use.STITCH ? stitchMargin(piece) : BESIDE_PUNCHED_MM + hole.diameterMm() / 2;
            if (!(inside >= wanted - CHORDS_MM)) {
                fault("%s hole of %s is %.2f mm inside, wanted %.2f", hole.use(), piece.name(), inside, wanted);
            }
        }
    }

    /** A welt is cut at its inner edge, too, and where it is in two half-way between two holes. */
    private double stitchMargin(Piece piece) {
        double margin = spec.stitching().marginMm();
        if (piece.kind() != Piece.Kind.WELT) {
            return margin;
        }
        double welt = Math.min(margin, spec.welt().innerMarginMm());
        return piece.name().contains("part")
                ? Math.min(welt, 0.3 * spec.stitching().pitchMm())
                : welt;
    }

    private void seam(Seam seam) {
        double asked = spec.stitching().pitchMm();
        if (!(seam.pitchMm() > 0)) {
            fault("the %s has a pitch of %.2f mm", seam.name(), seam.pitchMm());
        }
        boolean told = pattern.advice().stream()
                .map(AdviceWording::sentence)
                .anyMatch(text -> text.contains("holes of the " + seam.name()) && text.contains(" mm apart"));
        double worst = 0;
        List<Double> rows = along(seam, seam.layers().get(0));
        for (int i = 0; i + 1 < rows.size(); i++) {
            double stitch = rows.get(i + 1) - rows.get(i);
            worst = Math.max(worst, Math.abs(stitch - asked));
            if (!(stitch > 1.2)) {
                fault("two holes of the %s are %.2f mm apart", seam.name(), stitch);
            }
        }
        if (worst > 0.05 * asked && !told) {
            fault("a stitch of the %s is off by %.2f mm, and nothing is said", seam.name(), worst);
        }
        if (seam.closed()) {
            congruent(seam.name(), seam.layers());
        } else {
            alongAlike(seam, rows);
        }
        for (Seam.Layer layer : seam.layers()) {
            Piece piece = named(layer.piece());
            if (layer.holes().stream()
                    .anyMatch(p -> piece.holes().stream()
                            .noneMatch(hole -> hole.centre().equals(p)))) {
                fault("a hole of the %s is not in the %s", seam.name(), layer.piece());
            }
        }
    }

    private void alongAlike(Seam seam, List<Double> first) {
        Seam.Layer last = seam.layers().get(seam.layers().size() - 1);
        if (last.holes().size() != first.size()) {
            fault("the layers of the %s differ in their holes", seam.name());
        }
        for (Seam.Layer layer : seam.layers()) {
            List<Double> own = along(seam, layer);
            for (int i = 0; i < own.size(); i++) {
                double at = first.get(layer.firstHole() + i) - first.get(layer.firstHole());
                if (Math.abs(own.get(i) - at) > 0.05) {
                    fault("hole %d of the %s is %.2f mm off its partner", i, layer.piece(), own.get(i) - at);
                    return;
                }
            }
        }
    }

    /** How far along the row each hole of a layer is; straight from hole to hole where it runs round a box. */
    private List<Double> along(Seam seam, Seam.Layer layer) {
        List<Point> holes = layer.holes();
        List<Double> along = new ArrayList<>();
        if (seam.closed()) {
            double sum = 0;
            for (int i = 0; i <= holes.size(); i++) {
                along.add(sum);
                sum += holes.get(i % holes.size()).distance(holes.get((i + 1) % holes.size()));
            }
            return along;
        }
        Polyline row = named(layer.piece()).marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.STITCH_ROW)
                .map(Mark::line)
                .filter(line -> line.points().get(0).distance(holes.get(0)) < 0.01)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row is drawn on the " + layer.piece()));
        int k = 0;
        double before = 0;
        for (Point hole : holes) {
            while (k + 2 < row.points().size() && off(hole, row, k) > 1e-3) {
                before += row.points().get(k).distance(row.points().get(k + 1));
                k++;
            }
            if (off(hole, row, k) > 1e-3) {
                fault("a hole of the %s lies beside its row", layer.piece());
            }
            along.add(before + row.points().get(k).distance(hole));
        }
        return along;
    }

    private static double off(Point p, Polyline row, int k) {
        return toSegment(p, row.points().get(k), row.points().get(k + 1));
    }

    /** Holes of layers that lie flat on one another are as far from each other on each. */
    private void congruent(String name, List<Seam.Layer> layers) {
        List<Point> first = layers.get(0).holes();
        for (Seam.Layer layer : layers) {
            if (layer.holes().size() != first.size()) {
                fault("the layers of the %s differ in their holes", name);
                return;
            }
            for (int i = 1; i < first.size(); i++) {
                for (int k : new int[] {0, i / 2, i - 1}) {
                    double off = layer.holes().get(i).distance(layer.holes().get(k))
                            - first.get(i).distance(first.get(k));
                    if (Math.abs(off) > 0.05) {
                        fault("holes of the %s are %.2f mm off on the %s", name, off, layer.piece());
                        return;
                    }
                }
            }
        }
    }

    private Piece named(String name) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private void fault(String format, Object... values) {
        faults.add(String.format(Locale.ROOT, format, values));
    }

    /** How far a point is inside a ring: to its nearest side, less than 0 where it is outside. By the even-odd rule. */
    private static double inside(Point p, List<Point> ring) {
        double nearest = Double.POSITIVE_INFINITY;
        boolean in = false;
        Point a = ring.get(ring.size() - 1);
        for (Point b : ring) {
            nearest = Math.min(nearest, toSegment(p, a, b));
            if (a.y() > p.y() != b.y() > p.y() && p.x() < a.x() + (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y())) {
                in = !in;
            }
            a = b;
        }
        return in ? nearest : -nearest;
    }

    private static double toSegment(Point p, Point a, Point b) {
        double x = b.x() - a.x();
        double y = b.y() - a.y();
        double square = x * x + y * y;
        double t = square == 0 ? 0 : Math.max(0, Math.min(1, ((p.x() - a.x()) * x + (p.y() - a.y()) * y) / square));
        return Math.hypot(a.x() + t * x - p.x(), a.y() + t * y - p.y());
    }

    private static double area(List<Point> ring) {
        double twice = 0;
        Point a = ring.get(ring.size() - 1);
        for (Point b : ring) {
            twice += a.x() * b.y() - b.x() * a.y();
            a = b;
        }
        return twice / 2;
    }
}
