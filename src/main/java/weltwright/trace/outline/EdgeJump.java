package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A jump of a measured outline from one line of the photo to another: from the knife's edge to the border of a pattern
 * on its handle or to that of its shadow. Both lines may be equally clear, but there is no edge along the jump itself,
 * unlike at a step of the knife. A jump is a stretch of weak edge over which the outline changes from one side of its
 * own smoothed curve to the other. Which of both lines is the knife's is unknown, so the outline on either side of the
 * jump is uncertain by its height, as far as it keeps to the same side of the smoothed curve, but not past the knife's
 * ends.
 *
 * @param from index of the first uncertain point of the ring
 * @param to index of the last one; less than {@code from} where the ring begins between them
 * @param heightMm distance of the two lines
 */
public record EdgeJump(int from, int to, double heightMm) {
    /**
     * Standard deviation of the Gaussian that smooths an outline: a knife's own curves change little by it, dents and
     * bulges much. Chosen by eye.
     */
    public static final double SMOOTHING_MM = 4;

    /** Distance of the points compared: that of the measured points. */
    private static final double STEP_MM = 0.16;

    /** Gaps in a weak stretch that are bridged; chosen by eye. */
    private static final double JOINED_MM = 0.5;

    /** Least height of a jump, above noise and the effect of smoothing on corners; chosen by eye. */
    private static final double LEAST_MM = 1;

    /** Least slope of a jump against the outline: gentler ones are curves; chosen by eye. */
    private static final double LEAST_SLOPE = 0.5;

    /** Least length of outline on either side: shorter ones are a few stray points, which the fit ignores; by eye. */
    private static final double FOLLOWED_MM = 2.4;

    /** Distance from the smoothed curve at which the outline has returned to it; chosen by eye. */
    private static final double RETURNED_MM = 0.1;

    /**
     * Finds the jumps of an outline.
     *
     * @param ring measured points, closed and counter-clockwise, x along the knife towards the tip
     * @param certainty of an edge at each of them, as in {@link UncertainStretch#of}
     * @param frontX x of the handle's end, where many knives have a step
     */
    static List<EdgeJump> in(Polyline ring, double[] certainty, double frontX) {
        return new Search(ring, certainty, frontX).jumps();
    }

    /** Returns the ring without its uncertain points. */
    static Polyline bridged(Polyline ring, List<EdgeJump> jumps) {
        return Polyline.closed(IntStream.range(0, ring.points().size())
                .filter(i -> !isOpen(i, jumps))
                .mapToObj(ring.points()::get)
                .toList());
    }

    /** Returns the certainty of the ring's points, set to 0 where a jump makes them uncertain. */
    public static double[] reduceCertainty(double[] certainty, List<EdgeJump> jumps) {
        return IntStream.range(0, certainty.length)
                .mapToDouble(i -> isOpen(i, jumps) ? 0 : certainty[i])
                .toArray();
    }

    private static boolean isOpen(int i, List<EdgeJump> jumps) {
        return jumps.stream().anyMatch(jump -> jump.contains(i));
    }

    /** Returns whether a point of the ring is uncertain by this jump. */
    public boolean contains(int i) {
        return from <= to ? i >= from && i <= to : i >= from || i <= to;
    }

    /** Compares the ring with its smoothed curve, both resampled in equal steps. */
    private static final class Search {
        private final double stepMm;
        private final List<Point> smoothed;

        /** Index of the ring's point at each step. */
        private final int[] at;

        private final boolean[] weak;

        /** Signed distance of the outline from its smoothed curve, positive outside. */
        private final double[] offset;

        private final int tip;
        private final int butt;
        private final double frontX;

        Search(Polyline ring, double[] certainty, double frontX) {
            this.frontX = frontX;
            List<Point> even = ring.resampled(STEP_MM).points();
            int n = even.size();
            stepMm = ring.lengthMm() / n;
            smoothed = ring.smoothed(SMOOTHING_MM, STEP_MM).points();
            at = new int[n];
            weak = new boolean[n];
            offset = new double[n];
            double[] station = ring.stationsMm();
            int point = 0;
            for (int i = 0; i < n; i++) {
                while (point + 1 < certainty.length && station[point + 1] <= i * stepMm) {
                    point++;
                }
                at[i] = point;
                weak[i] = certainty[point] < UncertainStretch.WEAK;
                Point along = smoothed.get((i + 1) % n)
                        .minus(smoothed.get(Math.floorMod(i - 1, n)))
                        .unit();
                offset[i] = -along.cross(even.get(i).minus(smoothed.get(i)));
            }
            Comparator<Integer> byX =
                    Comparator.comparingDouble(i -> even.get(i).x());
            tip = IntStream.range(0, n).boxed().max(byX).orElseThrow();
            butt = IntStream.range(0, n).boxed().min(byX).orElseThrow();
        }

        List<EdgeJump> jumps() {
            int n = weak.length;
            int joined = (int) Math.round(JOINED_MM / stepMm);
            int start = 0;
            while (start < n && weak[start]) {
                start++;
            }
            List<EdgeJump> jumps = new ArrayList<>();
            int first = -1;
            int last = -1;
            for (int i = start; i <= start + n; i++) {
                if (first >= 0 && (i - last > joined || i == start + n)) {
                    add(first - 1, (last + 1) % n, jumps);
                    first = -1;
                }
                if (i < start + n && weak[i % n]) {
                    first = first < 0 ? i : first;
                    last = i;
                }
            }
            return jumps;
        }

        /** Adds the jump between two certain points, if it is one. */
        private void add(int from, int to, List<EdgeJump> jumps) {
            int n = weak.length;
            int a = from % n;
            double height = Math.abs(offset[to] - offset[a]);
            boolean crosses = offset[to] * offset[a] < 0;
            boolean isStep = Math.abs(smoothed.get(a).x() - frontX) < SMOOTHING_MM;
            int before = stepsBeside(a, -1);
            int after = stepsBeside(to, 1);
            if (crosses
                    && !isStep
                    && height > LEAST_MM
                    && height > LEAST_SLOPE * smoothed.get(a).distance(smoothed.get(to))
                    && Math.min(before, after) * stepMm > FOLLOWED_MM) {
                jumps.add(new EdgeJump(at[Math.floorMod(a - before, n)], at[(to + after) % n], height));
            }
        }

        /** Returns the number of steps from a point over which the outline keeps to one side of its smoothed curve. */
        private int stepsBeside(int from, int step) {
            int n = weak.length;
            double side = Math.signum(offset[from]);
            int steps = 0;
            int i = from;
            while (steps < n && i != tip && i != butt && side * offset[i] > RETURNED_MM) {
                steps++;
                i = Math.floorMod(i + step, n);
            }
            return steps;
        }
    }
}
