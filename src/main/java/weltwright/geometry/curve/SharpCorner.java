package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.fit.CyclicPoints;
import weltwright.geometry.fit.CyclicPoints.Sample;

/**
 * A true corner, which any lens rounds off: where the lines through the points on either side meet.
 *
 * @param at where the corner is
 * @param roundedMm how much of the curve on either side is rounded off
 */
record SharpCorner(Point at, double roundedMm) {
    /** How much of the curve on either side of a corner the lens rounds off. */
    private static final double ROUNDED_MM = 0.6;

    /** The lines that meet in a corner are fitted to so much of the curve beyond that. */
    private static final double REACH_MM = 2;

    /** Rounding reaches so much farther at the most acute of corners than at a square one. */
    private static final double MOST_STRETCH = 3.5;

    /** Lines nearer to parallel than this meet anywhere. */
    private static final double LEAST_SINE = 0.15;

    /** A square corner computed farther than this from the measured one is not believed. */
    private static final double MOST_MM = 1.5;

    /** A line through fewer points than this, as they count, points anywhere. */
    private static final double LEAST_POINTS = 3;

    private static final double LEAST_PART = 0.25;

    /** Where all points near a corner are faint they still say best where its sides run. */
    private static final double FAINT_WEIGHT = 0.01;

    /**
     * @param index of the point at the corner
     * @param previous the corner before; the points looked at go no farther
     * @param next the corner after
     */
    static SharpCorner of(CyclicPoints run, int index, int previous, int next) {
        double roomBefore = index == previous ? run.lengthMm() : run.away(index, previous, -1);
        double roomAfter = index == next ? run.lengthMm() : run.away(index, next, 1);
        Point measured = run.points().get(index);
        SharpCorner corner = new SharpCorner(measured, ROUNDED_MM);
        // The more acute a corner, the farther from it it is rounded; how acute it is, the first round tells.
        for (int round = 0; round < 2; round++) {
            Optional<Line> before = Line.from(measured, beside(run, index, -1, roomBefore, corner.roundedMm()));
            Optional<Line> after = Line.from(measured, beside(run, index, 1, roomAfter, corner.roundedMm()));
            if (before.isEmpty()
                    || after.isEmpty()
                    || Math.abs(before.get().away().cross(after.get().away())) < LEAST_SINE) {
                return corner;
            }
            double half = Math.acos(Math.max(
                            -1, Math.min(1, before.get().away().dot(after.get().away()))))
                    / 2;
            double stretch = Math.min(MOST_STRETCH, Math.sin(Math.PI / 4) / Math.sin(half));
            Point meeting = before.get().meets(after.get());
            if (meeting.distance(measured) > MOST_MM * Math.max(1, stretch)) {
                return corner;
            }
            corner = new SharpCorner(meeting, ROUNDED_MM * Math.max(1, stretch));
        }
        return corner;
    }

    /** The points to one side of a corner, beyond what is rounded off. */
    private static List<Sample> beside(CyclicPoints run, int index, int step, double room, double roundedMm) {
        double rounded = Math.min(roundedMm, room / 4);
        double reach = Math.min(rounded + REACH_MM, room - rounded);
        List<Sample> beside = new ArrayList<>();
        for (int k = 1; k < run.size() / 2; k++) {
            int i = Math.floorMod(index + step * k, run.size());
            double away = run.away(index, i, step);
            if (away > reach) {
                break;
            }
            if (away > rounded) {
                beside.add(new Sample(away, run.points().get(i), run.weight()[i] + FAINT_WEIGHT));
            }
        }
        return beside;
    }

    /** @param away the direction away from the corner */
    private record Line(Point through, Point away) {

        /** The line of least squares through points beside a corner, by the axis of their inertia, if they make one. */
        static Optional<Line> from(Point corner, List<Sample> points) {
            double weights = 0;
            double squares = 0;
            Point middle = new Point(0, 0);
            for (Sample point : points) {
                weights += point.weight();
                squares += point.weight() * point.weight();
                middle = middle.plus(point.at().times(point.weight()));
            }
            // Where a few points count for all of them (Kish's effective number) they make no line.
            if (points.isEmpty() || weights * weights / squares < Math.max(LEAST_POINTS, LEAST_PART * points.size())) {
                return Optional.empty();
            }
            middle = middle.times(1 / weights);
            double xx = 0;
            double xy = 0;
            double yy = 0;
            for (Sample point : points) {
                Point arm = point.at().minus(middle);
                xx += point.weight() * arm.x() * arm.x();
                xy += point.weight() * arm.x() * arm.y();
                yy += point.weight() * arm.y() * arm.y();
            }
            double angle = Math.atan2(2 * xy, xx - yy) / 2;
            Point direction = new Point(Math.cos(angle), Math.sin(angle));
            boolean outward = direction.dot(middle.minus(corner)) > 0;
            return Optional.of(new Line(middle, outward ? direction : direction.times(-1)));
        }

        Point meets(Line other) {
            double t = other.through.minus(through).cross(other.away) / away.cross(other.away);
            return through.plus(away.times(t));
        }
    }
}
