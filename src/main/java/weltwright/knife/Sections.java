package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The cross-sections of a knife: blade on the tip's side of the heel, handle on the other.
 *
 * <ul>
 *   <li>The blade has a full flat grind: a wedge from the edge's thickness to the spine's. The two flats keep their angle
 *       along the blade, so where the blade narrows towards its tip the spine grows thin with it.
 *   <li>The handle is a super-ellipse as wide as the outline and as thick as the handle.
 * </ul>
 */
public final class Sections {
    /** Between an ellipse and a rounded slab, as handles of wood mostly are. Common practice; no source. */
    static final double HANDLE_EXPONENT = 2.5;

    private static final int HANDLE_POINTS = 96;
    private static final double STEP_MM = 0.25;

    private final Knife knife;
    private final Polyline outline;
    private final double fromMm;
    private final double toMm;

    Sections(Knife knife) {
        this.knife = knife;
        outline = knife.outline().sampled(STEP_MM);
        var xs = outline.points().stream().mapToDouble(Point::x).summaryStatistics();
        fromMm = xs.getMin();
        toMm = xs.getMax();
    }

    /** The knife's greatest x, in mm: the tip. */
    public double toMm() {
        return toMm;
    }

    /** The section at a station strictly between butt and tip. */
    public Section at(double xMm) {
        Reach reach = reachAt(xMm);
        return xMm < knife.landmarks().heel().x()
                ? new Section(xMm, Section.Part.HANDLE, handle(reach))
                : new Section(xMm, Section.Part.BLADE, blade(reach));
    }

    private Reach reachAt(double xMm) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        List<Point> points = outline.points();
        Point from = points.get(points.size() - 1);
        for (Point to : points) {
            if ((from.x() <= xMm) != (to.x() <= xMm)) {
                double y = from.towards(to, (xMm - from.x()) / (to.x() - from.x())).y();
                low = Math.min(low, y);
                high = Math.max(high, y);
            }
            from = to;
        }
        if (low > high) {
            throw new IllegalArgumentException("station " + xMm + " is not between " + fromMm + " and " + toMm);
        }
        return new Reach(low, high);
    }

    private List<Point> blade(Reach reach) {
        double heightAtHeel = knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
        double share = Math.min(1, reach.mm() / heightAtHeel);
        double edge = knife.edgeThicknessMm() / 2;
        double spine = edge + share * (knife.spineThicknessMm() / 2 - edge);
        List<Point> wedge = new ArrayList<>();
        wedge.add(new Point(reach.edge(), -edge));
        wedge.add(new Point(reach.spine(), -spine));
        wedge.add(new Point(reach.spine(), spine));
        if (edge > 0) {
            wedge.add(new Point(reach.edge(), edge));
        }
        return wedge;
    }

    private List<Point> handle(Reach reach) {
        return new SuperEllipse(reach.mm() / 2, knife.handleThicknessMm() / 2, HANDLE_EXPONENT)
                .points(new Point((reach.edge() + reach.spine()) / 2, 0), HANDLE_POINTS);
    }

    /** From where to where the knife reaches across its axis, y in mm. */
    private record Reach(double edge, double spine) {
        double mm() {
            return spine - edge;
        }
    }
}
