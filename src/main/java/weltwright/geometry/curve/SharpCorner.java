package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.fit.CyclicPoints;
import weltwright.geometry.fit.CyclicPoints.Sample;

/**
 * Reconstructs a corner that a lens has rounded off: the intersection of two lines fitted to the measured points on its
 * two sides. All constants are chosen by eye.
 *
 * @param at position of the corner, in mm
 * @param roundedMm arc length on either side of the corner that is rounded off and should not be fitted
 */
record SharpCorner(Point at, double roundedMm) {
    /** Arc length on either side of a right-angled corner that is rounded off. */
    private static final double ROUNDED_MM = 0.5;

    /** Arc length beyond that to which a line is fitted. */
    private static final double REACH_MM = 3;

    /** Greatest ratio of the rounded length at an acute corner to that at a right-angled one. */
    private static final double GREATEST_STRETCH = 3.5;

    /** Least sine of the angle between two lines whose intersection is used. */
    private static final double LEAST_SINE = 0.15;

    /** Greatest distance of a right-angled corner from the measured one; a farther intersection is discarded. */
    private static final double GREATEST_SHIFT_MM = 1.5;

    /** Least effective number of points for a line. */
    private static final double LEAST_POINTS = 3;

    /** Least ratio of the effective number of points to their number for a line. */
    private static final double LEAST_EFFECTIVE_FRACTION = 0.25;

    /** Added to each weight, so that points of weight 0 determine the lines where there are no others. */
    private static final double FAINT_WEIGHT = 0.01;

    /**
     * Reconstructs the corner at a measured point; the measured point itself where no line can be fitted.
     *
     * @param run measured points
     * @param index of the point at the corner
     * @param previous index of the corner before, which bounds the points that are used
     * @param next index of the corner after
     */
    static SharpCorner of(CyclicPoints run, int index, int previous, int next) {
        double roomBefore = index == previous ? run.lengthMm() : run.distanceAlong(index, previous, -1);
        double roomAfter = index == next ? run.lengthMm() : run.distanceAlong(index, next, 1);
        Point measured = run.points().get(index);
        SharpCorner corner = new SharpCorner(measured, ROUNDED_MM);
        // The rounded length depends on the angle, which the first round estimates.
        for (int round = 0; round < 2; round++) {
            Optional<Line> before = Line.from(measured, beside(run, index, -1, roomBefore, corner.roundedMm()));
            Optional<Line> after = Line.from(measured, beside(run, index, 1, roomAfter, corner.roundedMm()));
            if (before.isEmpty() && after.isEmpty()) {
                return corner;
            }
            boolean meet = before.isPresent()
                    && after.isPresent()
                    && Math.abs(before.get().outward().cross(after.get().outward())) >= LEAST_SINE;
            if (!meet) {
                Point a = before.or(() -> after).orElseThrow().foot(measured);
                Point b = after.or(() -> before).orElseThrow().foot(measured);
                Point middle = a.plus(b).times(0.5);
                return middle.distance(measured) > GREATEST_SHIFT_MM ? corner : new SharpCorner(middle, ROUNDED_MM);
            }
            double half = Math.acos(Math.max(
                            -1,
                            Math.min(1, before.get().outward().dot(after.get().outward()))))
                    / 2;
            double stretch = Math.min(GREATEST_STRETCH, Math.sin(Math.PI / 4) / Math.sin(half));
            Point meeting = before.get().intersection(after.get());
            if (meeting.distance(measured) > GREATEST_SHIFT_MM * Math.max(1, stretch)
                    || isBeyondHalf(meeting, measured, run.points().get(previous))
                    || isBeyondHalf(meeting, measured, run.points().get(next))) {
                return corner;
            }
            corner = new SharpCorner(meeting, ROUNDED_MM * Math.max(1, stretch));
        }
        return corner;
    }

    /** Returns whether a point has moved more than half the way to a neighbour, so that it may pass that one. */
    private static boolean isBeyondHalf(Point moved, Point from, Point neighbour) {
        Point way = neighbour.minus(from);
        return moved.minus(from).dot(way) > way.dot(way) / 2;
    }

    /** The points on one side of a corner, beyond the rounded length. */
    private static List<Sample> beside(CyclicPoints run, int index, int step, double room, double roundedMm) {
        double rounded = Math.min(roundedMm, room / 4);
        double reach = Math.min(rounded + REACH_MM, room - rounded);
        List<Sample> beside = new ArrayList<>();
        for (int k = 1; k < run.size() / 2; k++) {
            int i = Math.floorMod(index + step * k, run.size());
            double distance = run.distanceAlong(index, i, step);
            if (distance > reach) {
                break;
            }
            if (distance > rounded) {
                beside.add(new Sample(distance, run.points().get(i), run.weight()[i] + FAINT_WEIGHT));
            }
        }
        return beside;
    }

    /** @param outward unit direction away from the corner */
    private record Line(Point through, Point outward) {

        /** Fits a line by orthogonal least squares: the principal axis of inertia of the points. */
        static Optional<Line> from(Point corner, List<Sample> points) {
            double weights = 0;
            double squares = 0;
            Point middle = new Point(0, 0);
            for (Sample point : points) {
                weights += point.weight();
                squares += point.weight() * point.weight();
                middle = middle.plus(point.at().times(point.weight()));
            }
            // Kish's effective sample size.
            if (points.isEmpty()
                    || weights * weights / squares < Math.max(LEAST_POINTS, LEAST_EFFECTIVE_FRACTION * points.size())) {
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
            boolean pointsOutward = direction.dot(middle.minus(corner)) > 0;
            return Optional.of(new Line(middle, pointsOutward ? direction : direction.times(-1)));
        }

        /** Returns the point of the line nearest to a point. */
        Point foot(Point p) {
            return through.plus(outward.times(p.minus(through).dot(outward)));
        }

        Point intersection(Line other) {
            double t = other.through.minus(through).cross(other.outward) / outward.cross(other.outward);
            return through.plus(outward.times(t));
        }
    }
}
