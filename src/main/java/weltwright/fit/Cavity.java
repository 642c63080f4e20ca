package weltwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import weltwright.fit.DrawCheck.Step;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.CrossSection;
import weltwright.knife.CrossSections;
import weltwright.knife.Knife;

/**
 * The room that a knife needs in its sheath to be drawn along the path that suits it best.
 *
 * <p>A point of the knife that is deep in the sheath passes every station nearer to the throat. So the cavity at a
 * station must take in all that lies deeper, where it passes: on a path along the axis its edge side is the least y
 * from the tip up to there, its spine side the greatest, and its section the hull of all deeper sections. Ease is kept
 * apart from the two sides and is part of the sections.
 */
public final class Cavity {
    private static final double STEP_MM = 1;

    /** By so much a station must at least lie past the handle's end, to be told from one before it. */
    private static final double PAST_HANDLE = 0.005;

    /** The handle's own last section is taken this far before its end. */
    private static final double BEFORE_HANDLE_END_MM = 0.01;

    /** The last station is this far short of the tip, where a section still has some height. */
    private static final double SHORT_OF_TIP_MM = 0.05;

    /** How many moments of the draw are looked at. */
    private static final int STEPS = 48;

    private final DrawPath path;
    private final boolean doubleEdged;
    private final double[] stations;
    private final double[] ownEdge;
    private final double[] ownSpine;
    private final double[] edge;
    private final double[] spine;
    private final double[] edgeAtMost;
    private final ConvexHull[] sections;
    private final CrossSection.Part[] parts;
    private final double[] widerMm;

    /**
     * @param throatMm station of the throat; between butt and tip
     * @param easeMm of air all round
     */
    public Cavity(Knife knife, double throatMm, double easeMm) {

        doubleEdged = knife.doubleEdged();
        CrossSections cuts = knife.sections();
        double end = cuts.toMm() - SHORT_OF_TIP_MM;
        int n = count(end - throatMm, knife.landmarks().heel().x() - throatMm);
        stations = new double[n];
        ownEdge = new double[n];
        ownSpine = new double[n];
        edge = new double[n];
        spine = new double[n];
        edgeAtMost = new double[n];
        sections = new ConvexHull[n];
        parts = new CrossSection.Part[n];
        widerMm = new double[n];
        for (int i = 0; i < n; i++) {
            stations[i] = throatMm + (end - throatMm) * i / (n - 1);
            CrossSection cut = cuts.at(stations[i]);
            ownEdge[i] = cut.edgeMm();
            ownSpine[i] = cut.spineMm();
            parts[i] = cut.part();
            sections[i] = ConvexHull.of(cut.boundary()).grown(easeMm);
        }
        path = new DrawPathSearch(stations, ownEdge, ownSpine).best();
        edge[n - 1] = ownEdge[n - 1];
        spine[n - 1] = ownSpine[n - 1];
        edgeAtMost[n - 1] = tip().y();
        for (int i = n - 2; i >= 0; i--) {
            edge[i] = Math.min(ownEdge[i], passing(i, edge[i + 1]));
            edgeAtMost[i] = Math.max(ownEdge[i], passing(i, edgeAtMost[i + 1]));
            spine[i] = Math.max(ownSpine[i], passing(i, spine[i + 1]));
            ConvexHull own = sections[i];
            sections[i] = own.with(passing(stations[i + 1], sections[i + 1], stations[i]));
            if (parts[i] == CrossSection.Part.HANDLE && parts[i + 1] != CrossSection.Part.HANDLE) {
                // A handle that widens up to its end is widest between these two stations.
                double heel = knife.landmarks().heel().x();
                double handleEnd = Math.max(stations[i], heel - BEFORE_HANDLE_END_MM);
                ConvexHull last = ConvexHull.of(cuts.at(handleEnd).boundary()).grown(easeMm);
                sections[i] = sections[i].with(passing(handleEnd, last, stations[i]));
            }
            widerMm[i] = (sections[i].perimeterMm() - own.perimeterMm()) / 2;
        }
    }

    /**
     * So many stations, at most 1 mm apart, that one lies where the handle ends, or hardly past it. From the last
     * station of the handle to the next the leather has the handle's width, wherever between them the handle ends.
     */
    private static int count(double lengthMm, double handleMm) {
        int fewest = (int) Math.max(2, Math.ceil(lengthMm / STEP_MM) + 1);
        int best = fewest;
        double least = 1;
        for (int n = fewest; handleMm > 0 && handleMm < lengthMm && n <= fewest + fewest / 8; n++) {
            double steps = handleMm * (n - 1) / lengthMm;
            double past = Math.ceil(steps + PAST_HANDLE) - steps;
            if (past < least) {
                least = past;
                best = n;
            }
        }
        return best;
    }

    /** The y at which what is at {@code y} at the next deeper station passes station i. */
    private double passing(int i, double y) {
        return path.passingMm(new Point(stations[i + 1], y), stations[i]);
    }

    /** The corners, in (y, z), of a section at one station where they pass another, nearer to the throat. */
    private List<Point> passing(double sectionMm, ConvexHull section, double stationMm) {
        return section.corners().stream()
                .map(p -> new Point(path.passingMm(new Point(sectionMm, p.x()), stationMm), p.y()))
                .toList();
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
    public ConvexHull section(int i) {
        return sections[i];
    }

    /** The greatest y that is swept, without ease: at the throat, or deeper where the knife comes out in an arc. */
    public double highestSpineMm() {
        return Arrays.stream(spine).max().orElseThrow();
    }

    /** The greatest y at which the edge, up to its tip, passes a station: where it comes nearest to the spine's row. */
    public double highestEdgeMm(int i) {
        return edgeAtMost[i];
    }

    /** The deepest point of the knife. */
    public Point tip() {
        int last = stations.length - 1;
        return new Point(stations[last] + SHORT_OF_TIP_MM, (ownEdge[last] + ownSpine[last]) / 2);
    }

    /** Along which the knife is drawn. */
    public DrawPath path() {
        return path;
    }

    /** What the edge sweeps on its way out, from the throat to the tip: the side of the cavity without ease. */
    public Polyline sweptEdge() {
        return side(edge);
    }

    /** What the spine sweeps, from the throat to the tip. */
    public Polyline sweptSpine() {
        return side(spine);
    }

    /**
     * How the knife draws from a sheath.
     *
     * @param stitches where it is sewn, in the knife's plane
     * @param giveMm by how much formed leather gives
     */
    public DrawCheck check(List<Point> stitches, double giveMm) {
        List<List<Point>> swept = new ArrayList<>(List.of(sweptEdge().points()));
        List<List<Point>> own = new ArrayList<>(List.of(side(ownEdge).points()));
        if (doubleEdged) {
            swept.add(sweptSpine().points());
            own.add(side(ownSpine).points());
        }
        List<Step> steps = steps(own, stitches);
        // What is swept is known at stations only; on a curved path the edge itself may come a few hundredths nearer.
        double least = steps.stream()
                .mapToDouble(Step::edgeToStitchMm)
                .reduce(nearest(0, swept, stitches).edgeToStitchMm(), Math::min);
        return new DrawCheck(path, grip(giveMm), least, steps);
    }

    private List<Step> steps(List<List<Point>> edges, List<Point> stitches) {
        List<Step> steps = new ArrayList<>();
        double way = tip().x() - stations[0];
        for (int k = 0; k < STEPS; k++) {
            double drawn = way * k / STEPS;
            RigidMotion there = path.drawn(drawn);
            List<List<Point>> inside = new ArrayList<>();
            for (List<Point> edge : edges) {
                inside.add(edge.stream()
                        .map(there::apply)
                        .filter(p -> p.x() >= stations[0])
                        .toList());
            }
            if (inside.stream().allMatch(edge -> edge.size() > 1)) {
                steps.add(nearest(drawn, inside, stitches));
            }
        }
        return steps;
    }

    /** Which stitch an edge comes nearest to, and where on the edge. */
    private static Step nearest(double drawnMm, List<List<Point>> edges, List<Point> stitches) {
        Step least = new Step(
                drawnMm,
                Double.POSITIVE_INFINITY,
                edges.get(0).get(0),
                edges.get(0).get(0));
        for (List<Point> edge : edges) {
            for (int i = 0; i + 1 < edge.size(); i++) {
                Point a = edge.get(i);
                Point along = edge.get(i + 1).minus(a);
                double square = along.dot(along);
                double length = Math.sqrt(square);
                for (Point stitch : stitches) {
                    if (Math.abs(stitch.x() - a.x()) > least.edgeToStitchMm() + length) {
                        continue;
                    }
                    double t = ((stitch.x() - a.x()) * along.x() + (stitch.y() - a.y()) * along.y()) / square;
                    double on = Math.max(0, Math.min(1, t));
                    double x = a.x() + on * along.x() - stitch.x();
                    double y = a.y() + on * along.y() - stitch.y();
                    if (x * x + y * y < least.edgeToStitchMm() * least.edgeToStitchMm()) {
                        least = new Step(drawnMm, Math.sqrt(x * x + y * y), a.plus(along.times(on)), stitch);
                    }
                }
            }
        }
        return least;
    }

    private Retention grip(double giveMm) {
        List<Retention.Station> all = new ArrayList<>();
        for (int i = 0; i < stations.length; i++) {
            all.add(new Retention.Station(
                    stations[i],
                    parts[i],
                    widerMm[i],
                    ownEdge[i],
                    ownEdge[i] - edge[i],
                    ownSpine[i],
                    spine[i] - ownSpine[i]));
        }
        return Retention.of(all, giveMm);
    }

    private Polyline side(double[] y) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < stations.length; i++) {
            points.add(new Point(stations[i], y[i]));
        }
        points.add(tip());
        return Polyline.open(points);
    }
}
