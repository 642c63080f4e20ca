package weltwright.knife;

import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.LineFit;

/**
 * The line along which a knife is measured: the middle line of its handle. The blade's own middle swings with its
 * belly, the handle's is straight on all but the most curved.
 *
 * <p>Steps: the principal axis of the outline's area; the narrower end of the two is the tip; then a straight line
 * through the middles of the widths over the handle, which are taken to be the half of the knife that ends in the butt.
 */
public final class LongAxis {
    /** A tip fills less of its end of the knife than a butt does; this much of the length is compared. */
    private static final double END = 0.1;

    private static final double HANDLE_FROM = 0.06;
    private static final double HANDLE_TO = 0.42;

    private LongAxis() {}

    /**
     * Finds the frame of a knife from its outline.
     *
     * @param outline closed, in any frame
     * @return the motion from the knife's frame, x towards the tip and the origin at the middle of the butt end, to the
     *     outline's frame
     */
    public static RigidMotion of(Polyline outline) {
        RigidMotion axis = principal(outline);
        Polyline along = outline.map(axis.inverse()::apply);
        if (endArea(along, true) < endArea(along, false)) {
            axis = new RigidMotion(axis.angleRad() + Math.PI, axis.shift());
        }
        // The widths stand square on the axis, so a better axis gives better middles.
        for (int i = 0; i < 3; i++) {
            axis = throughMiddles(outline, axis);
        }
        double butt = extent(outline.map(axis.inverse()::apply))[0];
        return new RigidMotion(axis.angleRad(), axis.apply(new Point(butt, 0)));
    }

    /** Second moments of the area by Green's theorem. */
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
