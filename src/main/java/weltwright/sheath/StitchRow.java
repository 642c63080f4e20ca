package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The holes of a row of stitches at equal arc length, the first and the last at its ends. Two layers of one seam have rows
 * of equal length, cut into the same short pieces; so a hole falls at the same place in both.
 */
final class StitchRow {
    /** Of an awl or a pricking iron for thread of 0.8 to 1 mm. Common practice; no source. */
    static final double HOLE_MM = 1.2;

    private static final double NOTCH_MM = 2;

    /** A tick for an iron, between the row and the outer edge. */
    private static final double TICK_FROM_MM = 1;

    private static final double TICK_TO_MM = 2.2;

    private final Polyline line;
    private final double lengthMm;
    private final double pitchMm;
    private final int count;
    private final int[] segment;
    private final double[] fraction;

    /**
     * @param line the row as it lies on the welt
     * @param lengthMm how much of it, from its first point, is sewn
     * @param wishedPitchMm the pitch asked for; the nearest is taken that divides the length
     */
    StitchRow(Polyline line, double lengthMm, double wishedPitchMm) {
        this.line = line;
        this.lengthMm = lengthMm;
        int stitches = (int) Math.max(1, Math.round(lengthMm / wishedPitchMm));
        pitchMm = lengthMm / stitches;
        count = stitches + 1;
        segment = new int[count];
        fraction = new double[count];
        double[] s = line.stationsMm();
        int k = 0;
        for (int i = 0; i < count; i++) {
            double at = Math.min(i * pitchMm, s[s.length - 1]);
            while (k + 2 < s.length && s[k + 1] < at) {
                k++;
            }
            segment[i] = k;
            fraction[i] = (at - s[k]) / (s[k + 1] - s[k]);
        }
    }

    Polyline line() {
        return line;
    }

    double pitchMm() {
        return pitchMm;
    }

    int count() {
        return count;
    }

    /** The places of the holes in a layer whose row has the same short pieces as this. */
    List<Point> on(Polyline layer) {
        List<Point> holes = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            holes.add(layer.points().get(segment[i]).towards(layer.points().get(segment[i] + 1), fraction[i]));
        }
        return holes;
    }

    static List<Hole> holes(List<Point> centres) {
        return centres.stream().map(p -> new Hole(p, HOLE_MM, Hole.Use.STITCH)).toList();
    }

    /** Where an iron is set on a layer, for each setting a tick beside the hole of its first tooth, to the row's outside. */
    List<Mark> ironMarks(Polyline layer) {
        List<Mark> marks = new ArrayList<>();
        for (IronSteps.Step step : IronSteps.of(on(layer), false)) {
            marks.add(stroke(layer, step.first(), TICK_FROM_MM, TICK_TO_MM, Mark.Kind.IRON, ""));
        }
        return marks;
    }

    /**
     * The marks of this row on one layer: the row itself, where it starts and stops, and two notches at the outer edge that
     * meet those of the other layers.
     *
     * @param layer the row there, with the outside on its right
     * @param from the first hole that is on the layer
     * @param to the last
     */
    List<Mark> marks(Polyline layer, double stitchMarginMm, int from, int to) {
        List<Mark> marks = new ArrayList<>();
        List<Point> sewn = new ArrayList<>(List.of(on(layer).get(from)));
        for (int k = segment[from] + 1; k <= segment[to]; k++) {
            if (layer.points().get(k).distance(sewn.get(0)) > 1e-9) {
                sewn.add(layer.points().get(k));
            }
        }
        sewn.add(on(layer).get(to));
        marks.add(new Mark(Polyline.open(sewn), Mark.Kind.STITCH_ROW, ""));
        if (from == 0) {
            marks.add(stroke(layer, 0, -NOTCH_MM, NOTCH_MM, Mark.Kind.STITCH_END, "start"));
        }
        if (to == count - 1) {
            marks.add(stroke(layer, count - 1, -NOTCH_MM, NOTCH_MM, Mark.Kind.STITCH_END, "stop"));
        }
        for (int i : new int[] {count / 4, 3 * (count - 1) / 4}) {
            if (i >= from && i <= to) {
                marks.add(stroke(layer, i, stitchMarginMm - NOTCH_MM, stitchMarginMm, Mark.Kind.NOTCH, ""));
            }
        }
        return marks;
    }

    /** A line across a layer just past a hole, as far to the inside and to the outside as said. */
    Polyline acrossAfter(int hole, double insideMm, double outsideMm) {
        Point here = on(line).get(hole);
        Point there = on(line).get(hole + 1);
        Point outwards = there.minus(here).unit().left().times(-1);
        Point middle = here.towards(there, 0.5);
        return Polyline.open(List.of(middle.minus(outwards.times(insideMm)), middle.plus(outwards.times(outsideMm))));
    }

    /** The row from its first hole to half-way past another. */
    Polyline upToPast(int hole) {
        List<Point> points = new ArrayList<>(line.points().subList(0, segment[hole] + 1));
        points.add(on(line).get(hole).towards(on(line).get(hole + 1), 0.5));
        return Polyline.open(points);
    }

    /** How many holes lie on the first part of the row. */
    int holesWithin(double mm) {
        return (int) Math.min(count, Math.floor(mm / pitchMm + 1e-9) + 1);
    }

    private Mark stroke(Polyline layer, int hole, double from, double to, Mark.Kind kind, String label) {
        Point a = layer.points().get(segment[hole]);
        Point b = layer.points().get(segment[hole] + 1);
        Point at = a.towards(b, fraction[hole]);
        Point outwards = b.minus(a).unit().left().times(-1);
        Polyline stroke = Polyline.open(List.of(at.plus(outwards.times(from)), at.plus(outwards.times(to))));
        return new Mark(stroke, kind, label);
    }
}
