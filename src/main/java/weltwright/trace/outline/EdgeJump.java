package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A place at which an outline passes from one line of the picture to another: from the knife's edge to the border of a
 * pattern on its handle, or to that of its shadow. Such a line may be as clear as the edge, but the way across to it is
 * not: there the outline goes to the other side of its own mean course where no edge shows. A step that a knife itself
 * has shows an edge on the step, too. Which of both lines is the knife's, nothing tells; so on either side the outline
 * is open by the leap's height, as far as it keeps beside its course, but not past the knife's ends.
 *
 * @param from index of the first point of the ring that is open
 * @param to index of the last one; less than {@code from} where the ring begins between them
 * @param heightMm how far apart the two lines are
 */
public record EdgeJump(int from, int to, double heightMm) {
    /**
     * An outline's mean course is its Gaussian mean: a knife's own curves bend little within this, dents and bulges
     * much.
     */
    public static final double COURSE_MM = 4;

    private static final double STEP_MM = 0.16;

    /** Weak points nearer together than this are on one way across. */
    private static final double JOINED_MM = 0.5;

    /** Lines that are nearer together than this are one, by its noise and by what smoothing makes of corners. */
    private static final double LEAST_MM = 1;

    /** The way across is at least so steep; a line that leaves another one gently is a curve. */
    private static final double LEAST_SLOPE = 0.5;

    /** What is followed for less than this is no line but a few stray points, over which the outline's curve runs. */
    private static final double FOLLOWED_MM = 2.4;

    /** So near to its course an outline is back on it. */
    private static final double BACK_MM = 0.1;

    /**
     * @param ring measured points, closed and counter-clockwise, x along the knife towards the tip
     * @param certainty that an edge was seen at each of them, as in {@link UncertainStretch#of}
     * @param frontX where the handle ends, and many knives have a step
     */
    static List<EdgeJump> in(Polyline ring, double[] certainty, double frontX) {
        return new Search(ring, certainty, frontX).leaps();
    }

    /** The ring without what is open of it, which straight lines bridge. */
    static Polyline bridged(Polyline ring, List<EdgeJump> leaps) {
        return Polyline.closed(IntStream.range(0, ring.points().size())
                .filter(i -> !isOpen(i, leaps))
                .mapToObj(ring.points()::get)
                .toList());
    }

    /** How certain an edge is at the ring's points, where a leap leaves nothing certain. */
    public static double[] doubted(double[] certainty, List<EdgeJump> leaps) {
        return IntStream.range(0, certainty.length)
                .mapToDouble(i -> isOpen(i, leaps) ? 0 : certainty[i])
                .toArray();
    }

    private static boolean isOpen(int i, List<EdgeJump> leaps) {
        return leaps.stream().anyMatch(leap -> leap.covers(i));
    }

    public boolean covers(int i) {
        return from <= to ? i >= from && i <= to : i >= from || i <= to;
    }

    /** Looks along the ring in equal steps, as its mean course goes. */
    private static final class Search {
        private final double stepMm;
        private final List<Point> course;

        /** The ring's point at each step. */
        private final int[] at;

        private final boolean[] weak;

        /** How far the outline lies outside of its course. */
        private final double[] wind;

        private final int tip;
        private final int butt;
        private final double frontX;

        Search(Polyline ring, double[] certainty, double frontX) {
            this.frontX = frontX;
            List<Point> even = ring.resampled(STEP_MM).points();
            int n = even.size();
            stepMm = ring.lengthMm() / n;
            course = ring.smoothed(COURSE_MM, STEP_MM).points();
            at = new int[n];
            weak = new boolean[n];
            wind = new double[n];
            double[] station = ring.stationsMm();
            int point = 0;
            for (int i = 0; i < n; i++) {
                while (point + 1 < certainty.length && station[point + 1] <= i * stepMm) {
                    point++;
                }
                at[i] = point;
                weak[i] = certainty[point] < UncertainStretch.WEAK;
                Point along = course.get((i + 1) % n)
                        .minus(course.get(Math.floorMod(i - 1, n)))
                        .unit();
                wind[i] = -along.cross(even.get(i).minus(course.get(i)));
            }
            Comparator<Integer> byX =
                    Comparator.comparingDouble(i -> even.get(i).x());
            tip = IntStream.range(0, n).boxed().max(byX).orElseThrow();
            butt = IntStream.range(0, n).boxed().min(byX).orElseThrow();
        }

        List<EdgeJump> leaps() {
            int n = weak.length;
            int joined = (int) Math.round(JOINED_MM / stepMm);
            int start = 0;
            while (start < n && weak[start]) {
                start++;
            }
            List<EdgeJump> leaps = new ArrayList<>();
            int first = -1;
            int last = -1;
            for (int i = start; i <= start + n; i++) {
                if (first >= 0 && (i - last > joined || i == start + n)) {
                    add(first - 1, (last + 1) % n, leaps);
                    first = -1;
                }
                if (i < start + n && weak[i % n]) {
                    first = first < 0 ? i : first;
                    last = i;
                }
            }
            return leaps;
        }

        /** Adds the way across between two places that are sure, if it is one. */
        private void add(int from, int to, List<EdgeJump> leaps) {
            int n = weak.length;
            int a = from % n;
            double height = Math.abs(wind[to] - wind[a]);
            boolean crosses = wind[to] * wind[a] < 0;
            boolean isStep = Math.abs(course.get(a).x() - frontX) < COURSE_MM;
            int before = beside(a, -1);
            int after = beside(to, 1);
            if (crosses
                    && !isStep
                    && height > LEAST_MM
                    && height > LEAST_SLOPE * course.get(a).distance(course.get(to))
                    && Math.min(before, after) * stepMm > FOLLOWED_MM) {
                leaps.add(new EdgeJump(at[Math.floorMod(a - before, n)], at[(to + after) % n], height));
            }
        }

        /** For how many steps from a place on the outline keeps on the same side of its course. */
        private int beside(int from, int step) {
            int n = weak.length;
            double side = Math.signum(wind[from]);
            int steps = 0;
            int i = from;
            while (steps < n && i != tip && i != butt && side * wind[i] > BACK_MM) {
                steps++;
                i = Math.floorMod(i + step, n);
            }
            return steps;
        }
    }
}
