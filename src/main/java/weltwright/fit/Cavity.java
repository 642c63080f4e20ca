package weltwright.fit;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.DrawCheck.Bind;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.Section;
import weltwright.knife.Sections;

/**
 * The room that a knife needs in its sheath to be drawn straight out, along its own axis.
 *
 * <p>A point of the knife that is deep in the sheath passes every station nearer to the throat. So the cavity at a station
 * must take in all that lies deeper: its edge side is the least y from the tip up to there, its spine side the greatest,
 * and its section the hull of all deeper sections. Ease is kept apart from the two sides and is part of the sections.
 */
public final class Cavity {
    /** Less than this is not said to bind: an outline is not known better, and leather gives. */
    private static final double BIND_MM = 0.3;

    private static final double STEP_MM = 1;
    /** The last station is this far short of the tip, where a section still has some height. */
    private static final double SHORT_OF_TIP_MM = 0.05;

    private final double[] stations;
    private final double[] ownEdge;
    private final double[] ownSpine;
    private final double[] edge;
    private final double[] spine;
    private final Hull[] sections;
    private final double easeMm;

    /**
     * @param throatMm station of the throat; between butt and tip
     * @param easeMm of air all round
     */
    public Cavity(Knife knife, double throatMm, double easeMm) {
        this.easeMm = easeMm;
        Sections cuts = knife.sections();
        double end = cuts.toMm() - SHORT_OF_TIP_MM;
        int n = (int) Math.max(2, Math.ceil((end - throatMm) / STEP_MM) + 1);
        stations = new double[n];
        ownEdge = new double[n];
        ownSpine = new double[n];
        edge = new double[n];
        spine = new double[n];
        sections = new Hull[n];
        for (int i = n - 1; i >= 0; i--) {
            boolean deepest = i == n - 1;
            stations[i] = throatMm + (end - throatMm) * i / (n - 1);
            Section cut = cuts.at(stations[i]);
            ownEdge[i] = cut.edgeMm();
            ownSpine[i] = cut.spineMm();
            edge[i] = deepest ? ownEdge[i] : Math.min(ownEdge[i], edge[i + 1]);
            spine[i] = deepest ? ownSpine[i] : Math.max(ownSpine[i], spine[i + 1]);
            Hull own = Hull.of(cut.boundary()).grown(easeMm);
            sections[i] = deepest ? own : own.with(sections[i + 1]);
        }
    }

    /** How many stations there are, from the throat (0) to the tip. */
    public int size() {
        return stations.length;
    }

    /** x of a station in the knife's frame. */
    public double stationMm(int i) {
        return stations[i];
    }

    /** All that passes a station, with its ease, in (y, z). */
    public Hull section(int i) {
        return sections[i];
    }

    /** The greatest y that passes through the throat, without ease. */
    public double highestSpineMm() {
        return spine[0];
    }

    /** The deepest point of the knife. */
    public Point tip() {
        int last = stations.length - 1;
        return new Point(stations[last] + SHORT_OF_TIP_MM, (ownEdge[last] + ownSpine[last]) / 2);
    }

    /** What the edge sweeps on its way out, from the throat to the tip: the side of the cavity without ease. */
    public Polyline sweptEdge() {
        return side(edge);
    }

    /** What the spine sweeps, from the throat to the tip. */
    public Polyline sweptSpine() {
        return side(spine);
    }

    /** How the knife draws from a sheath that is sewn at the given places. */
    public DrawCheck check(List<Point> stitches) {
        List<Bind> binds = new ArrayList<>();
        binds(binds, Side.EDGE);
        binds(binds, Side.SPINE);
        Polyline swept = sweptEdge();
        double least = stitches.stream()
                .mapToDouble(stitch -> distance(stitch, swept))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        double slack = spine[0] - edge[0] - (ownSpine[0] - ownEdge[0]) + 2 * easeMm;
        return new DrawCheck(binds, least, slack);
    }

    private void binds(List<Bind> binds, Side side) {
        int deep = -1;
        double depth = 0;
        for (int i = stations.length - 1; i >= -1; i--) {
            double narrow = i < 0 ? 0 : side == Side.EDGE ? ownEdge[i] - edge[i] : spine[i] - ownSpine[i];
            if (narrow > BIND_MM) {
                deep = deep < 0 ? i : deep;
                depth = Math.max(depth, narrow);
            } else if (deep >= 0) {
                binds.add(new Bind(side, stations[i + 1], stations[deep], depth));
                deep = -1;
                depth = 0;
            }
        }
    }

    private Polyline side(double[] y) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < stations.length; i++) {
            points.add(new Point(stations[i], y[i]));
        }
        points.add(tip());
        return Polyline.open(points);
    }

    private static double distance(Point p, Polyline line) {
        double least = Double.POSITIVE_INFINITY;
        List<Point> points = line.points();
        for (int i = 0; i + 1 < points.size(); i++) {
            Point a = points.get(i);
            Point along = points.get(i + 1).minus(a);
            double t = Math.max(0, Math.min(1, p.minus(a).dot(along) / along.dot(along)));
            least = Math.min(least, p.distance(a.plus(along.times(t))));
        }
        return least;
    }
}
