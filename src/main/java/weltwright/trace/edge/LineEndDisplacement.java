package weltwright.trace.edge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.appearance.GroundAppearance;

/**
 * The displacement of a knife's edge from the curve that was followed, by the ends of the ground's lines. Where a line
 * ends, the followed curve passes through its end; between lines it may keep to another edge nearby that is clearer,
 * such as the upper rim of a black handle on a black mat, or the border of a shadow. Then it bulges at every line, to
 * the same side.
 *
 * <p>Assumes that the edge between two lines lies as far beside the followed curve as at these lines.
 */
public final class LineEndDisplacement {
    /** Distance of the points of the curve; chosen by eye. */
    private static final double STEP_MM = 0.15;

    /** Half the length of a row across the curve: little more than what shows a line's end. */
    private static final double ROW_MM = 1.125 * PrintedLineScore.END_MM;

    private static final int ROW_SAMPLES = 19;

    /** Least score of a line's end, of 1; chosen by eye. */
    private static final double LEAST_END = 0.5;

    /** Greatest gap in a line's width, in points; chosen by eye. */
    private static final int GAP = 4;

    /** Greatest width of a line along the curve, in points: beyond it the two run side by side. Chosen by eye. */
    private static final int MOST_WIDTH = 20;

    /** Distance from a line at which a bulge has ended, in points; chosen by eye. */
    private static final int BESIDE = 20;

    /** Points to either side from which a normal is taken; chosen by eye. */
    private static final int CHORD = 6;

    /** Fewest lines in a row that must agree; chosen by eye. */
    private static final int FEWEST = 4;

    /** Least length of the curve between them; chosen by eye. */
    private static final double LEAST_LENGTH_MM = 25;

    /** Least displacement: blur and the curve's noise move a line's end by less. Chosen by eye. */
    private static final double LEAST_MM = 0.4;

    private final List<Point> points;
    private final GroundAppearance ground;

    private LineEndDisplacement(List<Point> points, GroundAppearance ground) {
        this.points = points;
        this.ground = ground;
    }

    /**
     * A line that ends at the curve.
     *
     * @param first index of the first point of the curve on it
     * @param last index of the last one
     */
    private record LineEnd(int first, int last) {
        int middle() {
            return (first + last) / 2;
        }

        int halfWidth() {
            return (last - first) / 2;
        }
    }

    /**
     * Returns the curve displaced to where the lines end; empty where they end at it.
     *
     * @param followed on the ground's plane, closed and counter-clockwise, in mm
     */
    public static Optional<Polyline> displaced(Polyline followed, GroundAppearance ground) {
        return new LineEndDisplacement(followed.resampled(STEP_MM).points(), ground).displaced();
    }

    private Optional<Polyline> displaced() {
        List<LineEnd> ends = ends();
        int count = ends.size();
        double[] bulge = new double[count];
        for (int k = 0; k < count; k++) {
            bulge[k] = bulgeMm(ends.get((k - 1 + count) % count), ends.get(k), ends.get((k + 1) % count));
        }
        double[] agreed = new double[count];
        for (int k = 0; k < count; k++) {
            int run = agreeing(bulge, k);
            if (run >= FEWEST && lengthMm(ends.get(k), ends.get((k + run - 1) % count)) > LEAST_LENGTH_MM) {
                for (int j = k; j < k + run; j++) {
                    agreed[j % count] = bulge[j % count];
                }
            }
        }
        return Arrays.stream(agreed).allMatch(b -> b == 0) ? Optional.empty() : Optional.of(moved(ends, agreed));
    }

    private double lengthMm(LineEnd from, LineEnd to) {
        return Math.floorMod(to.middle() - from.middle(), points.size()) * STEP_MM;
    }

    /**
     * Returns the curve moved outwards, without the bulges. Between two lines at which it bulges, the displacement is
     * interpolated; elsewhere it is that at the nearer line.
     */
    private Polyline moved(List<LineEnd> ends, double[] bulge) {
        List<Point> moved = new ArrayList<>();
        for (int k = 0; k < bulge.length; k++) {
            int next = (k + 1) % bulge.length;
            int from = ends.get(k).middle();
            int beside = beside(ends.get(k), ends.get(next));
            int length = Math.floorMod(ends.get(next).middle() - from - 1, points.size()) + 1;
            for (int i = 0; i < length; i++) {
                boolean isNearer = 2 * i < length;
                double off = bulge[k] != 0 && bulge[next] != 0
                        ? bulge[k] + (bulge[next] - bulge[k]) * i / length
                        : bulge[isNearer ? k : next];
                boolean isOnBulge = isNearer
                        ? bulge[k] != 0 && i < ends.get(k).halfWidth() + beside
                        : bulge[next] != 0 && length - i < ends.get(next).halfWidth() + beside;
                if (!isOnBulge) {
                    moved.add(point(from + i).plus(outward(from + i).times(off)));
                }
            }
        }
        return Polyline.closed(moved);
    }

    /** Returns the number of lines, from one on, at which the curve bulges to the same side. */
    private static int agreeing(double[] bulge, int first) {
        int run = 0;
        while (run < bulge.length && Math.signum(bulge[first]) * bulge[(first + run) % bulge.length] > LEAST_MM) {
            run++;
        }
        return run;
    }

    /** Returns how far the curve at a line lies outside of the chord between the points beside it. */
    private double bulgeMm(LineEnd before, LineEnd end, LineEnd after) {
        Point from = point(end.first() - beside(before, end));
        Point along = point(end.last() + beside(end, after)).minus(from).unit();
        return point(end.middle()).minus(from).cross(along);
    }

    /** Returns the distance from a line at which a bulge has ended, in points, or where the next line is as near. */
    private int beside(LineEnd end, LineEnd next) {
        return Math.min(BESIDE, Math.floorMod(next.first() - end.last(), points.size()) / 2);
    }

    /** Returns the lines that end at the curve, in order. Begins beside a line, so that none is cut in two. */
    private List<LineEnd> ends() {
        List<LineEnd> ends = new ArrayList<>();
        int start = 0;
        while (start < points.size() && isAtEnd(start)) {
            start++;
        }
        for (int i = start; i < start + points.size(); i++) {
            if (isAtEnd(i)) {
                int last = ends.size() - 1;
                if (last >= 0 && i - ends.get(last).last() <= GAP) {
                    ends.set(last, new LineEnd(ends.get(last).first(), i));
                } else {
                    ends.add(new LineEnd(i, i));
                }
            }
        }
        ends.removeIf(end -> 2 * end.halfWidth() > MOST_WIDTH);
        return ends;
    }

    private boolean isAtEnd(int i) {
        Point across = outward(i).times(ROW_MM);
        PrintedLineScore score =
                PrintedLineScore.of(ground, ROW_SAMPLES, point(i).minus(across), point(i).plus(across));
        return score.endAt(ROW_SAMPLES / 2) > LEAST_END;
    }

    private Point outward(int i) {
        return point(i + CHORD).minus(point(i - CHORD)).unit().left().times(-1);
    }

    private Point point(int i) {
        return points.get(Math.floorMod(i, points.size()));
    }
}
