package weltwright.knife;

import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.LineFit;

/**
 * Computes the long axis of a knife, along which it is measured: the middle line of its handle. The middle line of a
 * blade curves with its belly; that of a handle is straight on most knives.
 *
 * <ol>
 *   <li>The principal axis of the outline's area is a first axis.
 *   <li>The narrower of its two ends is the tip.
 *   <li>A straight line is fitted through the middles of the widths over the handle, taken to be the half of the knife
 *       that ends in the butt. This is done three times, since a better axis gives better middles.
 * </ol>
 */
public final class LongAxis {
    /**
     * The part of the length at each end over which areas are compared, as a tip is narrower than a butt. Chosen by
     * eye.
     */
    private static final double END = 0.1;

    /** The part of the knife's length, from the butt on, over which middles are taken. Chosen by eye. */
    private static final double HANDLE_FROM = 0.06;

    private static final double HANDLE_TO = 0.42;

    private LongAxis() {}

    /**
     * Finds the frame of a knife from its outline.
     *
     * @param outline closed, in any frame
     * @return the motion to the outline's frame from the knife's frame, which has x towards the tip and the origin at
     *     the middle of the butt end
     */
    public static RigidMotion of(Polyline outline) {
        RigidMotion axis = principal(outline);
        Polyline along = outline.map(axis.inverse()::apply);
        if (endArea(along, true) < endArea(along, false)) {
            axis = new RigidMotion(axis.angleRad() + Math.PI, axis.shift());
        }
        for (int i = 0; i < 3; i++) {
            axis = throughMiddles(outline, axis);
        }
        double butt = extent(outline.map(axis.inverse()::apply))[0];
        return new RigidMotion(axis.angleRad(), axis.apply(new Point(butt, 0)));
    }

    /** Returns the frame of the principal axis, with second moments of area by Green's theorem. */
    private static RigidMotion principal(Polyline outline) {
        Point centre = Point.of(outline.polygon().getCentroid().getCoordinate());
        double xx = 0;
        double xy = 0;
        double yy = 0;
        int n = outline.points().size();
        for (int i = 0; i < n; i++) {
            Point a = outline.points().get(i).minus(centre);
            Point b = outline.points().get((i + 1) % n).minus(centre);
            double cross = a.cross(b);
            xx += cross * (a.x() * a.x() + a.x() * b.x() + b.x() * b.x()) / 12;
            yy += cross * (a.y() * a.y() + a.y() * b.y() + b.y() * b.y()) / 12;
            xy += cross * (a.x() * b.y() + 2 * a.x() * a.y() + 2 * b.x() * b.y() + b.x() * a.y()) / 24;
        }
        return new RigidMotion(Math.atan2(2 * xy, xx - yy) / 2, centre);
    }

    private static double endArea(Polyline along, boolean left) {
        double[] extent = extent(along);
        double length = extent[1] - extent[0];
        OutlineSides sides = new OutlineSides(along);
        double sum = 0;
        int steps = 24;
        for (int i = 0; i < steps; i++) {
            double in = END * length * (i + 0.5) / steps;
            sum += sides.width(left ? extent[0] + in : extent[1] - in);
        }
        return sum;
    }

    private static RigidMotion throughMiddles(Polyline outline, RigidMotion axis) {
        Polyline along = outline.map(axis.inverse()::apply);
        OutlineSides sides = new OutlineSides(along);
        double[] extent = extent(along);
        double length = extent[1] - extent[0];
        LineFit middle = new LineFit();
        for (double part = HANDLE_FROM; part <= HANDLE_TO; part += 0.005) {
            double x = extent[0] + part * length;
            middle.add(x, sides.middle(x));
        }
        return new RigidMotion(axis.angleRad() + Math.atan(middle.slope()), axis.apply(new Point(0, middle.at(0))));
    }

    private static double[] extent(Polyline along) {
        var xs = along.points().stream().mapToDouble(Point::x).summaryStatistics();
        return new double[] {xs.getMin(), xs.getMax()};
    }
}
