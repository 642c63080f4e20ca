package weltwright.sheath.stitch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Stitching;

/**
 * Places the holes of a row of stitches at equal arc length, the first and the last at its ends. A corner has a hole,
 * so that no stitch cuts it off; the row is divided on either side of it separately. Two layers of one seam have rows
 * of equal length with corresponding segments, so a hole has the same station in both.
 */
public final class StitchRow {
    private static final Messages TEXTS = Messages.of(StitchRow.class);

    /** Least turn within one stitch for a corner. Chosen by eye. */
    private static final double CORNER_RAD = Math.toRadians(60);

    /** Least length of a stitch at a corner, as a share of the pitch. Chosen by eye. */
    private static final double SHORTEST = 0.6;

    private static final double SAME_RAD = Math.toRadians(0.1);

    private static final double NOTCH_MM = 2;

    private final Polyline line;
    private final double[] stations;
    private final int[] segment;
    private final double[] fraction;

    /**
     * @param line the row as it lies on the welt
     * @param fromMm where sewing begins, counted from its first point
     * @param toMm where it ends
     * @param wantedPitchMm the pitch asked for; the nearest that divides each part of the row is used
     */
    public StitchRow(Polyline line, double fromMm, double toMm, double wantedPitchMm) {
        this.line = line;
        double[] s = line.stationsMm();
        stations = stations(parts(line, s, fromMm, toMm, wantedPitchMm), wantedPitchMm);
        segment = new int[stations.length];
        fraction = new double[stations.length];
        int k = 0;
        for (int i = 0; i < stations.length; i++) {
            double at = Math.min(stations[i], s[s.length - 1]);
            while (k + 2 < s.length && s[k + 1] < at) {
                k++;
            }
            segment[i] = k;
            fraction[i] = (at - s[k]) / (s[k + 1] - s[k]);
        }
    }

    private static double[] stations(List<Double> parts, double wantedPitchMm) {
        List<Double> stations = new ArrayList<>(List.of(parts.get(0)));
        for (int p = 1; p < parts.size(); p++) {
            double from = parts.get(p - 1);
            double length = parts.get(p) - from;
            int stitches = (int) Math.max(1, Math.round(length / wantedPitchMm));
            for (int i = 1; i <= stitches; i++) {
                stations.add(from + i * length / stitches);
            }
        }
        return stations.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /**
     * Returns the stations of the ends and corners of the row. A corner is the sharpest of neighbouring places that
     * turn enough, or the middle of several alike.
     */
    private static List<Double> parts(Polyline line, double[] s, double fromMm, double toMm, double pitchMm) {
        List<Double> parts = new ArrayList<>(List.of(fromMm));
        double sharpest = 0;
        double first = 0;
        double last = 0;
        int before = 0;
        int after = 0;
        for (int k = 1; k + 1 < s.length && s[k] < toMm - SHORTEST * pitchMm; k++) {
            while (s[before + 1] < s[k] - pitchMm / 2) {
                before++;
            }
            while (after + 2 < s.length && s[after + 1] < s[k] + pitchMm / 2) {
                after++;
            }
            Point in = line.points().get(before + 1).minus(line.points().get(before));
            Point out = line.points().get(after + 1).minus(line.points().get(after));
            double turn = Math.abs(Math.atan2(in.cross(out), in.dot(out)));
            boolean inRow = s[k] > parts.get(parts.size() - 1) + SHORTEST * pitchMm;
            if (inRow && turn > CORNER_RAD && turn > sharpest + SAME_RAD) {
                sharpest = turn;
                first = s[k];
                last = s[k];
            } else if (inRow && sharpest > 0 && turn > sharpest - SAME_RAD) {
                last = s[k];
            } else if (sharpest > 0 && turn < CORNER_RAD) {
                parts.add((first + last) / 2);
                sharpest = 0;
            }
        }
        if (sharpest > 0) {
            parts.add((first + last) / 2);
        }
        parts.add(toMm);
        return parts;
    }

    public Polyline line() {
        return line;
    }

    /** Returns the pitch along the row. */
    public Seam.Pitch pitch() {
        double least = Double.POSITIVE_INFINITY;
        double greatest = 0;
        for (int i = 1; i < stations.length; i++) {
            least = Math.min(least, stations[i] - stations[i - 1]);
            greatest = Math.max(greatest, stations[i] - stations[i - 1]);
        }
        return new Seam.Pitch((stations[stations.length - 1] - stations[0]) / (stations.length - 1), least, greatest);
    }

    public int count() {
        return stations.length;
    }

    /** Returns the holes in a layer whose row has segments corresponding to those of this row. */
    public List<Point> on(Polyline layer) {
        List<Point> holes = new ArrayList<>(count());
        for (int i = 0; i < count(); i++) {
            holes.add(at(layer, i));
        }
        return holes;
    }

    public static List<Hole> holes(List<Point> centres, Stitching stitching) {
        return centres.stream()
                .map(p -> new Hole(p, stitching.holeMm(), Hole.Use.STITCH))
                .toList();
    }

    /**
     * Returns a tick for each setting of an iron on a layer, beside the hole of its first tooth, on the outside of the
     * row.
     */
    public List<Mark> ironMarks(Polyline layer) {
        List<Mark> marks = new ArrayList<>();
        for (IronPlacement.Step step : IronPlacement.of(on(layer), false)) {
            marks.add(IronPlacement.tick(at(layer, step.first()), outwards(layer, step.first())));
        }
        return marks;
    }

    /**
     * Returns the marks of this row on one layer: the row, its start and stop, and two notches at the outer edge that
     * align with those of the other layers.
     *
     * @param layer the row there, with the outside on its right
     * @param from index of the first hole on the layer
     * @param to index of the last
     */
    public List<Mark> marks(Polyline layer, double stitchMarginMm, int from, int to) {
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
            marks.add(stroke(layer, 0, -NOTCH_MM, NOTCH_MM, Mark.Kind.STITCH_END, TEXTS.text("stitch-row.start")));
        }
        if (to == count() - 1) {
            marks.add(stroke(
                    layer, count() - 1, -NOTCH_MM, NOTCH_MM, Mark.Kind.STITCH_END, TEXTS.text("stitch-row.stop")));
        }
        for (int i : new int[] {count() / 4, 3 * (count() - 1) / 4}) {
            if (i >= from && i <= to) {
                marks.add(stroke(layer, i, stitchMarginMm - NOTCH_MM, stitchMarginMm, Mark.Kind.NOTCH, ""));
            }
        }
        return marks;
    }

    /** Returns a line across the row as it lies on the welt, at a station. */
    public Polyline across(double stationMm, double insideMm, double outsideMm) {
        double[] s = line.stationsMm();
        int k = 1;
        while (s[k] < stationMm) {
            k++;
        }
        Point start = line.points().get(k - 1);
        Point along = line.points().get(k).minus(start).unit();
        Point outwards = along.left().times(-1);
        Point on = start.plus(along.times(stationMm - s[k - 1]));
        return Polyline.open(List.of(on.minus(outwards.times(insideMm)), on.plus(outwards.times(outsideMm))));
    }

    /** Returns the number of holes on the first {@code mm} of the row. */
    public int holesWithin(double mm) {
        return (int)
                Arrays.stream(stations).filter(station -> station <= mm + 1e-9).count();
    }

    private Mark stroke(Polyline layer, int hole, double from, double to, Mark.Kind kind, String label) {
        Point at = at(layer, hole);
        Point outwards = outwards(layer, hole);
        Polyline stroke = Polyline.open(List.of(at.plus(outwards.times(from)), at.plus(outwards.times(to))));
        return new Mark(stroke, kind, label);
    }

    private Point at(Polyline layer, int hole) {
        int k = segment[hole];
        return layer.points().get(k).towards(layer.points().get(k + 1), fraction[hole]);
    }

    private Point outwards(Polyline layer, int hole) {
        int k = segment[hole];
        return layer.points()
                .get(k + 1)
                .minus(layer.points().get(k))
                .unit()
                .left()
                .times(-1);
    }
}
