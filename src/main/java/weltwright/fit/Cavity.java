package weltwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import weltwright.fit.DrawCheck.Step;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.CrossSection;
import weltwright.knife.CrossSections;
import weltwright.knife.Knife;

/**
 * Computes the cavity of a sheath: the room that a knife sweeps as it is drawn along the path of least slack.
 *
 * <p>A point of the knife passes every station nearer to the throat. So the cavity at a station contains all that lies
 * deeper, where it passes: on a path along the axis its edge side is the least y from the tip up to there, its spine
 * side the greatest, and its section the convex hull of all deeper sections. The sections include the ease and the
 * {@linkplain #padded padding}; the two sides do not.
 */
public final class Cavity {
    /** Greatest spacing of stations. Chosen by eye. */
    private static final double STEP_MM = 1;

    /** Least distance of a station past the handle's end, in station spacings, for rounding. Chosen by eye. */
    private static final double PAST_HANDLE = 0.005;

    /** Distance of the handle's last section from its end. Chosen by eye. */
    private static final double BEFORE_HANDLE_END_MM = 0.01;

    /** Distance of the last station from the tip, where a section still has some height. Chosen by eye. */
    private static final double SHORT_OF_TIP_MM = 0.05;

    /** Number of positions of the knife that are checked along the draw. Chosen by eye. */
    private static final int STEPS = 48;

    private final DrawPath path;
    private final boolean doubleEdged;
    private final double[] stations;
    private final double[] ownEdge;
    private final double[] ownSpine;
    private final double[] edge;
    private final double[] spine;
    private final double[] highestEdge;
    private final ConvexHull[] sections;
    private final CrossSection.Part[] parts;
    private final double[] widerMm;
    private final double[] paddingMm;
    private final ConvexHull[] bareSections;

    /**
     * @param throatMm x of the throat; between butt and tip
     * @param easeMm clearance all round
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
        highestEdge = new double[n];
        sections = new ConvexHull[n];
        parts = new CrossSection.Part[n];
        widerMm = new double[n];
        paddingMm = new double[n];
        bareSections = sections;
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
        highestEdge[n - 1] = tip().y();
        for (int i = n - 2; i >= 0; i--) {
            edge[i] = Math.min(ownEdge[i], passing(i, edge[i + 1]));
            highestEdge[i] = Math.max(ownEdge[i], passing(i, highestEdge[i + 1]));
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

    private Cavity(Cavity bare, DoubleUnaryOperator paddingMm) {
        path = bare.path;
        doubleEdged = bare.doubleEdged;
        stations = bare.stations;
        ownEdge = bare.ownEdge;
        ownSpine = bare.ownSpine;
        edge = bare.edge;
        spine = bare.spine;
        highestEdge = bare.highestEdge;
        parts = bare.parts;
        widerMm = bare.widerMm;
        this.paddingMm = Arrays.stream(stations).map(paddingMm).toArray();
        bareSections = bare.bareSections;
        sections = new ConvexHull[stations.length];
        Arrays.setAll(sections, i -> section(i, this.paddingMm[i]));
    }

    /**
     * Returns the cavity of a sheath with padding glued to the inside of its back, on which the knife slides. Sections
     * include the padding, half of it on either side of the knife. Draw and grip are those of this cavity, for the
     * leather is cut as much wider.
     *
     * @param thicknessMm of the padding at a station; 0 where there is none
     */
    public Cavity padded(DoubleUnaryOperator thicknessMm) {
        return new Cavity(this, thicknessMm);
    }

    /**
     * Returns a number of stations, at most 1 mm apart, for which one lies at the handle's end or hardly past it. The
     * leather keeps the handle's width from the last station of the handle to the next, wherever between them the
     * handle ends.
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

    /** Returns the y at which a point with {@code y} at the next deeper station passes station i. */
    private double passing(int i, double y) {
        return path.passingMm(new Point(stations[i + 1], y), stations[i]);
    }

    /** The corners, in (y, z), of a section at one station where they pass another, nearer to the throat. */
    private List<Point> passing(double sectionMm, ConvexHull section, double stationMm) {
        return section.corners().stream()
                .map(p -> new Point(path.passingMm(new Point(sectionMm, p.x()), stationMm), p.y()))
                .toList();
    }

    /** Returns the number of stations, from the throat (0) to the tip. */
    public int size() {
        return stations.length;
    }

    /** Returns x of a station in the knife's frame. */
    public double stationMm(int i) {
        return stations[i];
    }

    /** Returns the thickness of the padding at a station; 0 where there is none. */
    public double paddingMm(int i) {
        return paddingMm[i];
    }

    /** Returns the section of the cavity at a station, with ease and padding, in (y, z). */
    public ConvexHull section(int i) {
        return sections[i];
    }

    /** Returns the section of the cavity at a station as if it were padded by this, with ease, in (y, z). */
    public ConvexHull section(int i, double paddingMm) {
        return bareSections[i].thickened(paddingMm);
    }

    /**
     * Returns the greatest y that is swept, without ease: at the throat, or deeper where the knife is drawn in an arc.
     */
    public double highestSpineMm() {
        return Arrays.stream(spine).max().orElseThrow();
    }

    /**
     * Returns the greatest y at which the edge, tip included, passes a station, which is nearest to the row on the
     * spine's side.
     */
    public double highestEdgeMm(int i) {
        return highestEdge[i];
    }

    /** Returns the deepest point of the knife. */
    public Point tip() {
        int last = stations.length - 1;
        return new Point(stations[last] + SHORT_OF_TIP_MM, (ownEdge[last] + ownSpine[last]) / 2);
    }

    /** Returns the path along which the knife is drawn. */
    public DrawPath path() {
        return path;
    }

    /** Returns the edge's side of the cavity without ease, from the throat to the tip. */
    public Polyline sweptEdge() {
        return side(edge);
    }

    /** Returns the spine's side of the cavity without ease, from the throat to the tip. */
    public Polyline sweptSpine() {
        return side(spine);
    }

    /**
     * Checks the draw of the knife from a sheath.
     *
     * @param stitches stitch holes of the sheath in the knife's plane
     * @param giveMm by how much formed leather gives
     */
    public DrawCheck check(List<Point> stitches, double giveMm) {
        List<List<Point>> swept = new ArrayList<>(List.of(sweptEdge().points()));
        List<List<Point>> own = new ArrayList<>(List.of(side(ownEdge).points()));
        if (doubleEdged) {
            swept.add(sweptSpine().points());
            own.add(side(ownSpine).points());
        }
        List<Point> ordered =
                stitches.stream().sorted(Comparator.comparingDouble(Point::x)).toList();
        List<Step> steps = steps(own, ordered);
        // The swept sides are known at stations only; on a curved path the edge may come a few hundredths nearer.
        double least = steps.stream()
                .mapToDouble(Step::edgeToStitchMm)
                .reduce(nearest(0, swept, ordered).edgeToStitchMm(), Math::min);
        return new DrawCheck(path, retention(giveMm), least, steps);
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

    /**
     * Returns the least distance between an edge and a stitch, with the point of the edge and the stitch.
     *
     * @param stitches in ascending order of x
     */
    private static Step nearest(double drawnMm, List<List<Point>> edges, List<Point> stitches) {
        Step least = new Step(
                drawnMm,
                Double.POSITIVE_INFINITY,
                edges.get(0).get(0),
                edges.get(0).get(0));
        for (List<Point> edge : edges) {
            int from = 0;
            for (int i = 0; i + 1 < edge.size(); i++) {
                Point a = edge.get(i);
                Point along = edge.get(i + 1).minus(a);
                double square = along.dot(along);
                double length = Math.sqrt(square);
                from = from(a.x() - least.edgeToStitchMm() - length, from, stitches);
                for (int k = from; k < stitches.size(); k++) {
                    Point stitch = stitches.get(k);
                    if (stitch.x() > a.x() + least.edgeToStitchMm() + length) {
                        break;
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

    /** Returns the index of the first point whose x is no less than this, looked for from another on. */
    private static int from(double xMm, int near, List<Point> points) {
        int from = near;
        while (from > 0 && points.get(from - 1).x() >= xMm) {
            from--;
        }
        while (from < points.size() && points.get(from).x() < xMm) {
            from++;
        }
        return from;
    }

    private Retention retention(double giveMm) {
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
