package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;

/**
 * The leather over one face of the knife, laid flat. Still in the knife's frame, but farther from the middle of the
 * leather (the fold, or the ridge of a panel) by what the leather needs to go over the section: its <i>growth</i>.
 *
 * <ol>
 *   <li>At each station the leather is wrapped over all that passes there, from the stitch on the welt.
 *   <li>Leather cannot follow a sudden step, such as from blade to handle. So next to a step the growth is made larger,
 *       until it has fallen off; it is never made less.
 *   <li>Where the row turns across the knife at its tip, the leather lies flat on the welt: from there on the growth is
 *       that of the last station before, in a panel none.
 *   <li>The row keeps its length when it is laid flat, for leather is not gathered along a seam. So what a growing
 *       width adds to a short piece of it across is taken off along.
 * </ol>
 */
public final class LeatherDevelopment {
    /**
     * Past a step the growth falls off within this. A gentle slope would leave the leather wide far beyond the step; a
     * steep one takes the row aslant for the same length. A row that comes in by h at a slope s is shorter along the
     * knife by h(1 - √(1 - s²)) / s, and the leather between the rows with it: by half of h at 0.8, by all of h square
     * across.
     */
    private static final double FALLS_WITHIN_MM = 6;

    private static final double GENTLE_SLOPE = 0.3;

    private static final double STEEP_SLOPE = 0.8;

    /** What may be left of a step beyond that. */
    private static final double LEFT_MM = 0.3;

    /** Stations to either side over which the foot of a slope is rounded. */
    private static final int FAIRED_OVER = 1;

    /** Leather that is wider than this needs a word, if it stays so for longer than a step makes it anyway. */
    private static final double WIDE_FOLDED_MM = 1;

    private static final double WIDE_PANEL_MM = 1.5;

    private static final double BY_A_STEP_MM = 8;

    private final Planform form;
    private final Cavity cavity;
    private final Leather leather;
    private final Lie lie;
    private final List<Point> points;
    private final int deepest;
    private final double edgeTurnMm;
    private final double spineTurnMm;
    /** What the leather needs; the growth is never less. */
    private final RequiredGrowth required;

    private final double[] edgeGrowth;
    private final double[] spineGrowth;
    private final Polyline row;

    /** Half of a folded body, or one of two panels that share the bulge. */
    public static LeatherDevelopment shared(Planform form, Cavity cavity, Leather leather) {
        return new LeatherDevelopment(form, cavity, leather, Lie.HALF, Optional.empty());
    }

    /** A face that goes round the knife alone. */
    public static LeatherDevelopment faceAlone(Planform form, Cavity cavity, Leather leather) {
        return new LeatherDevelopment(form, cavity, leather, Lie.ALL, Optional.empty());
    }

    /** A back that lies flat. */
    public static LeatherDevelopment flatBack(Planform form, Cavity cavity, Leather leather) {
        return new LeatherDevelopment(form, cavity, leather, Lie.FLAT, Optional.empty());
    }

    /** The same layer round the knife and padding; only the stations that are padded are wrapped anew. */
    public LeatherDevelopment over(Cavity padded) {
        return new LeatherDevelopment(form, padded, leather, lie, Optional.of(this));
    }

    /** How much of the knife's thickness a layer goes round. */
    private enum Lie {
        HALF,
        ALL,
        FLAT
    }

    /** @param bare the same layer without padding, if it is known */
    private LeatherDevelopment(
            Planform form, Cavity cavity, Leather leather, Lie lie, Optional<LeatherDevelopment> bare) {
        this.form = form;
        this.cavity = cavity;
        this.leather = leather;
        this.lie = lie;
        points = form.row().points();
        deepest = deepest();
        edgeTurnMm = points.get(turn(-1)).x();
        spineTurnMm = form.folded() ? edgeTurnMm : points.get(turn(1)).x();
        required = bare.map(known -> known.required.over(cavity)).orElseGet(this::required);
        edgeGrowth = faired(required.edge(), required.edgeWithNeighbours());
        spineGrowth = faired(required.spine(), required.spineWithNeighbours());
        row = laidFlat();
    }

    /** The row, laid flat, in as many pieces as {@link Planform#row()} has, each as long as it is there. */
    public Polyline row() {
        return row;
    }

    /**
     * The stretch past a step over which the row keeps the leather wide; empty where that is too short to matter.
     *
     * <p>The row is as long on the flat leather as on the welt. So over a length d of it the row comes in by d at the
     * most, and then runs square across the knife; by 0.8 d if the leather between the rows is to lose no more than two
     * fifths of its length there. Where the width that is needed falls off by w, the leather is therefore still wide by
     * w - n · 0.8 d, where n is the number of rows that come in: two, in a folded body one on either half, in a panel
     * one on either side. It is as wide as it must be from d = w / (0.8 n) on, and no row of that length is any nearer.
     */
    public Optional<Advice.StaysWide> staysWide(SheathKind kind) {
        double limit = form.folded() ? WIDE_FOLDED_MM : WIDE_PANEL_MM;
        int start = 0;
        double most = 0;
        for (int i = 0; i < cavity.size(); i++) {
            double wide = wideMm(i);
            if (wide <= limit) {
                if (most > 0) {
                    return Optional.of(new Advice.StaysWide(
                            kind, leather.bulge(), most, cavity.stationMm(start), cavity.stationMm(i)));
                }
                start = i;
            } else if (cavity.stationMm(i) - cavity.stationMm(start) > BY_A_STEP_MM) {
                most = Math.max(most, wide);
            }
        }
        return Optional.empty();
    }

    /** By how much the leather is wider at a station than it must be; 0 from where the row turns across the tip. */
    private double wideMm(int station) {
        double x = cavity.stationMm(station);
        if (x >= Math.min(edgeTurnMm, spineTurnMm)) {
            return 0;
        }
        int edge = nearest(x, -1);
        double onEdge = growth(required.edge(), edgeTurnMm, points.get(edge).x())
                + shift(edge).y();
        if (form.folded()) {
            return -2 * onEdge;
        }
        int spine = nearest(x, 1);
        return shift(spine).y()
                - growth(required.spine(), spineTurnMm, points.get(spine).x())
                - onEdge;
    }

    /**
     * Where a point of the knife's plane lies on the flat leather. Half of a folded body carries all that lies at one
     * station as far as the row on the edge's side there, and what is deeper than the row as far as its deepest point.
     * A panel grows to both sides, so there a point only goes along the knife: as far as the row on either side of it,
     * each by its share.
     */
    public Point flat(Point p) {
        Point edge = rowShift(p.x(), -1);
        if (form.folded()) {
            return p.plus(edge);
        }
        Point spine = rowShift(p.x(), 1);
        double edgeY = points.get(nearest(p.x(), -1)).y();
        double spineY = points.get(nearest(p.x(), 1)).y();
        double share = edgeY == spineY ? 0.5 : Math.max(0, Math.min(1, (p.y() - edgeY) / (spineY - edgeY)));
        return p.plus(new Point(edge.x() + share * (spine.x() - edge.x()), 0));
    }

    /**
     * By how much laying flat moves the row at a station; {@code way} leads from its deepest point to the side meant.
     */
    private Point rowShift(double x, int way) {
        int deep = nearest(x, way);
        int out = deep + way;
        Point shift = shift(deep);
        if (out < 0 || out >= points.size() || points.get(deep).x() <= x) {
            return shift;
        }
        double apart = points.get(deep).x() - points.get(out).x();
        return apart <= 0
                ? shift
                : shift.towards(shift(out), Math.min(1, (points.get(deep).x() - x) / apart));
    }

    private Point shift(int k) {
        return row.points().get(k).minus(points.get(k));
    }

    /**
     * The point of the row on one side that is the last, seen from the deepest one, to be no nearer to the throat than
     * x.
     */
    private int nearest(double x, int way) {
        int near = deepest;
        int far = way < 0 ? 0 : points.size() - 1;
        while (near != far && Math.abs(far - near) > 1) {
            int middle = (near + far) / 2;
            if (points.get(middle).x() >= x) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return near;
    }

    private int deepest() {
        int deepest = 0;
        for (int k = 1; k < points.size(); k++) {
            if (points.get(k).x() > points.get(deepest).x()) {
                deepest = k;
            }
        }
        return deepest;
    }

    /** From the deepest point towards one end of the row: where it first runs more along the knife than across. */
    private int turn(int step) {
        int k = deepest;
        while (k + step >= 0 && k + step < points.size()) {
            Point along = points.get(k + step).minus(points.get(k));
            if (Math.abs(along.x()) >= Math.abs(along.y())) {
                return k;
            }
            k += step;
        }
        return k;
    }

    private RequiredGrowth required() {
        List<RequiredGrowth.RowAtStation> rows = new ArrayList<>();
        double pieceMm = points.get(0).distance(points.get(1));
        int edgeAt = 0;
        int spineAt = points.size() - 1;
        for (int i = 0; i < cavity.size(); i++) {
            double x = cavity.stationMm(i);
            while (edgeAt < deepest && points.get(edgeAt).x() < x) {
                edgeAt++;
            }
            while (spineAt > deepest && points.get(spineAt).x() < x) {
                spineAt--;
            }
            rows.add(new RequiredGrowth.RowAtStation(
                    x,
                    edgeAt * pieceMm,
                    points.get(edgeAt).y(),
                    points.get(spineAt).y()));
        }
        return lie == Lie.FLAT
                ? RequiredGrowth.none(form, leather, rows)
                : RequiredGrowth.of(cavity, form, leather, lie == Lie.ALL, rows, edgeTurnMm);
    }

    private Polyline laidFlat() {
        double[] across = new double[points.size()];
        Arrays.setAll(across, this::across);
        comeIn(across, 0, -1);
        if (!form.folded()) {
            comeIn(across, points.size() - 1, 1);
        }
        Point[] flat = new Point[points.size()];
        int anchor = form.folded() ? 0 : deepest;
        flat[anchor] = new Point(points.get(anchor).x(), across[anchor]);
        for (int k = anchor; k + 1 < flat.length; k++) {
            flat[k + 1] = next(flat[k], k, k + 1, across[k + 1]);
        }
        for (int k = anchor; k > 0; k--) {
            flat[k - 1] = next(flat[k], k, k - 1, across[k - 1]);
        }
        return Polyline.open(Arrays.asList(flat));
    }

    /**
     * From the throat to the deepest point: nowhere farther in than the row comes at the steep slope, or in the plane
     * by itself. So past a step where the row in the plane comes in, too, the leather is wide for longer; before it, it
     * is never tight because the row had no length left.
     */
    private void comeIn(double[] across, int throat, int outwards) {
        int way = throat < deepest ? 1 : -1;
        for (int k = throat; k != deepest; k += way) {
            Point piece = points.get(k + way).minus(points.get(k));
            double most = Math.max(STEEP_SLOPE * piece.norm(), -outwards * piece.y());
            across[k + way] = outwards * Math.max(outwards * across[k + way], outwards * across[k] - most);
        }
    }

    /**
     * The end of a piece of the row, laid at its own length: as far across as is wanted, the rest along. A piece that
     * is too short for that goes square across, and those after it make good what is missing.
     */
    private Point next(Point from, int start, int end, double acrossMm) {
        Point piece = points.get(end).minus(points.get(start));
        double length = piece.norm();
        double across = Math.max(-length, Math.min(length, acrossMm - from.y()));
        double along = Math.sqrt(length * length - across * across);
        return from.plus(new Point(Math.copySign(along, piece.x()), across));
    }

    private double across(int k) {
        Point p = points.get(k);
        if (k <= deepest) {
            return p.y() - growth(edgeGrowth, edgeTurnMm, p.x());
        }
        // Past its deepest point the row of a folded sheath runs across to the fold, and may come back a little.
        return form.folded()
                ? p.y() - growth(edgeGrowth, edgeTurnMm, edgeTurnMm)
                : p.y() + growth(spineGrowth, spineTurnMm, p.x());
    }

    private double growth(double[] atStations, double turnMm, double x) {
        double first = cavity.stationMm(0);
        double step = cavity.stationMm(1) - first;
        double last = cavity.stationMm(atStations.length - 1);
        if (!form.folded() && x > last && turnMm > last) {
            return atStations[atStations.length - 1] * Math.max(0, turnMm - x) / (turnMm - last);
        }
        double at = Math.max(0, Math.min(atStations.length - 1, (Math.min(x, turnMm) - first) / step));
        int i = (int) Math.min(atStations.length - 2, Math.floor(at));
        return atStations[i] + (at - i) * (atStations[i + 1] - atStations[i]);
    }

    /**
     * Takes the steps out of a growth; a panel's dies away to nothing where the row turns across the tip. It falls from
     * the very brink of a step: were the brink rounded from outside, the leather would be wider along the whole slope,
     * by twice the slope for each mm over which it is rounded. The cut is round there all the same, for it is a
     * parallel of the row. Where the step is too high to fall off in time, it falls at once here, and {@link #comeIn}
     * as fast as a row may: that depends on how the row itself runs.
     */
    private double[] faired(double[] needed, double[] withNeighbours) {
        double step = cavity.stationMm(1) - cavity.stationMm(0);
        double slope = slope(needed, step);
        double fall = slope < STEEP_SLOPE ? slope * step : Double.POSITIVE_INFINITY;
        double[] fair = Fairing.hollowsRounded(Fairing.sloped(withNeighbours, fall, slope * step), FAIRED_OVER);
        if (!form.folded()) {
            for (int i = 0; i < fair.length; i++) {
                double most = slope * Math.max(0, Math.min(edgeTurnMm, spineTurnMm) - cavity.stationMm(i));
                fair[i] = smoothLeast(fair[i], most);
            }
        }
        return fair;
    }

    /** As gentle as the greatest step allows that must have fallen off in time. */
    private static double slope(double[] growth, double step) {
        int within = (int) Math.floor(FALLS_WITHIN_MM / step);
        double greatest = 0;
        for (int i = within; i < growth.length; i++) {
            greatest = Math.max(greatest, Math.abs(growth[i] - growth[i - within]));
        }
        double needed = (greatest - LEFT_MM) / FALLS_WITHIN_MM;
        return Math.max(GENTLE_SLOPE, Math.min(STEEP_SLOPE, needed));
    }

    /**
     * The lesser of two lengths, without a corner where they cross. Of a length a that is half of b it takes a / 2048,
     * so that a step in a short blade keeps its height.
     */
    private static double smoothLeast(double a, double b) {
        return a == 0 || b == 0 ? 0 : a * b / Math.pow(Math.pow(a, 8) + Math.pow(b, 8), 0.125);
    }
}
