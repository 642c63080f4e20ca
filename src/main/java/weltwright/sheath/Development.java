package weltwright.sheath;

import java.util.Arrays;
import java.util.List;
import weltwright.fit.Cavity;
import weltwright.fit.Hull;
import weltwright.fit.Wrap;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The leather over one face of the knife, laid flat. Still in the knife's frame, but farther from the middle of the leather
 * (the fold, or the ridge of a panel) by what the leather needs to go over the section: its <i>growth</i>.
 *
 * <ol>
 *   <li>At each station the leather is wrapped over all that passes there, from the stitch on the welt.
 *   <li>Leather cannot follow a sudden step, such as from blade to handle. So each growth is carried to its surroundings and
 *       then levelled, which never makes it less.
 *   <li>Where the row turns across the knife at its tip, the leather lies flat on the welt: from there on the growth is that
 *       of the last station before, in a panel none.
 *   <li>The row keeps its length when it is laid flat, for leather is not gathered along a seam. So what a growing width
 *       adds to a short piece of it across is taken off along.
 * </ol>
 */
final class Development {
    /** Over so much of the knife's length a panel's growth dies away towards its tip. */
    private static final double FADE_MM = 15;

    /** Stations to either side: as few as let the row keep its length. */
    private static final int[] LEVELLED_OVER = {8, 16, 32, 64};

    private final Planform form;
    private final Cavity cavity;
    private final List<Point> points;
    private final int deepest;
    private final double edgeTurnMm;
    private final double spineTurnMm;
    private double[] edgeGrowth;
    private double[] spineGrowth;
    private Polyline row;

    /** @param neutralMm from the inside of the leather to its neutral fibre */
    Development(Planform form, Cavity cavity, double neutralMm) {
        this.form = form;
        this.cavity = cavity;
        points = form.row().points();
        deepest = deepest();
        edgeTurnMm = points.get(turn(-1)).x();
        spineTurnMm = form.folded() ? edgeTurnMm : points.get(turn(1)).x();
        wrap(neutralMm);
        double[] edge = edgeGrowth;
        double[] spine = spineGrowth;
        for (int over : LEVELLED_OVER) {
            edgeGrowth = Fairing.levelled(edge, over);
            spineGrowth = Fairing.levelled(spine, over);
            if (layFlat()) {
                return;
            }
        }
    }

    /** The row, laid flat, in as many pieces as {@link Planform#row()} has, each as long as it is there. */
    Polyline row() {
        return row;
    }

    /** Where a point between fold and edge lies on the flat leather; over a panel it stays where it is. */
    Point flat(Point p) {
        return form.folded() ? new Point(p.x(), p.y() - growth(edgeGrowth, edgeTurnMm, p.x())) : p;
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

    private void wrap(double neutralMm) {
        int n = cavity.size();
        edgeGrowth = new double[n];
        spineGrowth = new double[n];
        double face = form.weltMm() / 2;
        int edgeAt = 0;
        int spineAt = points.size() - 1;
        for (int i = 0; i < n; i++) {
            double x = cavity.stationMm(i);
            while (edgeAt < deepest && points.get(edgeAt).x() < x) {
                edgeAt++;
            }
            while (spineAt > deepest && points.get(spineAt).x() < x) {
                spineAt--;
            }
            Point edge = new Point(points.get(edgeAt).y(), face);
            Hull section = cavity.section(i);
            if (!form.folded()) {
                Wrap wrap = Wrap.panel(edge, new Point(points.get(spineAt).y(), face), section, neutralMm);
                double fade = fade(Math.min(edgeTurnMm, spineTurnMm) - x);
                edgeGrowth[i] = fade * wrap.bulgeOnEdgeSideMm();
                spineGrowth[i] = fade * wrap.bulgeOnSpineSideMm();
            } else if (x <= edgeTurnMm || i == 0) {
                edgeGrowth[i] = Wrap.folded(edge, form.foldMm(), section, neutralMm)
                                .flatMm()
                        - (form.foldMm() - edge.x());
            } else {
                edgeGrowth[i] = edgeGrowth[i - 1];
            }
        }
    }

    /** Lays the row flat; says whether every piece of it could keep its length. */
    private boolean layFlat() {
        Point[] flat = new Point[points.size()];
        boolean kept = true;
        int anchor = form.folded() ? 0 : deepest;
        flat[anchor] = across(anchor);
        for (int k = anchor; k + 1 < flat.length; k++) {
            kept &= lay(flat, k, k + 1);
        }
        for (int k = anchor; k > 0; k--) {
            kept &= lay(flat, k, k - 1);
        }
        row = Polyline.open(Arrays.asList(flat));
        return kept;
    }

    private boolean lay(Point[] flat, int from, int to) {
        Point piece = points.get(to).minus(points.get(from));
        double across = across(to).y() - flat[from].y();
        double left = piece.dot(piece) - across * across;
        flat[to] = new Point(
                flat[from].x() + Math.copySign(Math.sqrt(Math.max(0, left)), piece.x()), flat[from].y() + across);
        return left >= 0;
    }

    private Point across(int k) {
        Point p = points.get(k);
        return k <= deepest || form.folded()
                ? new Point(p.x(), p.y() - growth(edgeGrowth, edgeTurnMm, p.x()))
                : new Point(p.x(), p.y() + growth(spineGrowth, spineTurnMm, p.x()));
    }

    private double growth(double[] atStations, double turnMm, double x) {
        double first = cavity.stationMm(0);
        double step = cavity.stationMm(1) - first;
        double at = Math.max(0, Math.min(atStations.length - 1, (Math.min(x, turnMm) - first) / step));
        int i = (int) Math.min(atStations.length - 2, Math.floor(at));
        return atStations[i] + (at - i) * (atStations[i + 1] - atStations[i]);
    }

    private static double fade(double beforeTurnMm) {
        double t = Math.max(0, Math.min(1, beforeTurnMm / FADE_MM));
        return t * t * (3 - 2 * t);
    }
}
