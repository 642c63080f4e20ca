package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The cross-sections of a knife: blade on the tip's side of the heel, handle on the other.
 *
 * <ul>
 *   <li>The blade has its {@link Grind}. The two flats keep their angle along the blade, so where it narrows towards
 *       its tip to less than the grind is high, the spine grows thin with it.
 *   <li>The handle is a super-ellipse as wide as the outline and as thick as the handle.
 *   <li>Where thicknesses were measured along the knife, both are as thick as these say ({@link ThicknessProfile}).
 * </ul>
 */
public final class CrossSections {
    private static final int HOLLOW_POINTS = 12;
    private static final int HANDLE_POINTS = 96;
    private static final double STEP_MM = 0.25;

    private final Knife knife;
    private final Polyline outline;
    private final double fromMm;
    private final double toMm;
    private final DoubleUnaryOperator handleThickness;
    private final DoubleUnaryOperator bladeThickness;

    CrossSections(Knife knife) {
        this.knife = knife;
        outline = knife.outline().sampled(STEP_MM);
        var xs = outline.points().stream().mapToDouble(Point::x).summaryStatistics();
        fromMm = xs.getMin();
        toMm = xs.getMax();
        double tip = knife.landmarks().tip().x();
        double overall = tip - fromMm;
        handleThickness = knife.thickness().ofHandle(knife.bladeLengthMm(), overall, knife.handleThicknessMm());
        bladeThickness = knife.thickness()
                .ofBlade(
                        knife.bladeLengthMm(),
                        knife.spineThicknessMm(),
                        fromTip -> 2 * halfByGrind(reachAt(tip - fromTip)));
    }

    /** The knife's greatest x, in mm: the tip. */
    public double toMm() {
        return toMm;
    }

    /** The section at a station strictly between butt and tip. */
    public CrossSection at(double xMm) {
        Reach reach = reachAt(xMm);
        return xMm < knife.landmarks().heel().x()
                ? new CrossSection(xMm, CrossSection.Part.HANDLE, handle(xMm, reach))
                : new CrossSection(xMm, CrossSection.Part.BLADE, blade(xMm, reach));
    }

    private Reach reachAt(double xMm) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        List<Point> points = outline.points();
        Point from = points.get(points.size() - 1);
        for (Point to : points) {
            if ((from.x() <= xMm) != (to.x() <= xMm)) {
                double y =
                        from.towards(to, (xMm - from.x()) / (to.x() - from.x())).y();
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

    private List<Point> blade(double xMm, Reach reach) {
        double fromTipMm = knife.landmarks().tip().x() - xMm;
        double thick = knife.thickness().isEmpty()
                ? halfByGrind(reach)
                : Math.max(halfBehindEdge(), bladeThickness.applyAsDouble(fromTipMm) / 2);
        return knife.doubleEdged() ? doubleEdged(reach, thick) : ground(reach, thick);
    }

    /** @param thick half the greatest thickness of the section */
    private List<Point> ground(Reach reach, double thick) {
        double thin = halfBehindEdge();
        double grindMm = grindMm();
        double up = Math.min(reach.mm(), grindMm);
        boolean hollow = knife.shaping().grind().kind() == Grind.Kind.HOLLOW;
        List<Point> near = new ArrayList<>();
        int steps = hollow ? HOLLOW_POINTS : 1;
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            // A wheel's circle is taken for a parabola that leaves the edge along the mid-plane.
            double z = thin + (hollow ? share * share : share) * (thick - thin);
            near.add(new Point(reach.edge() + up * share, z));
        }
        if (reach.mm() > grindMm) {
            near.add(new Point(reach.spine(), thick));
        }
        return mirrored(near);
    }

    private List<Point> doubleEdged(Reach reach, double thick) {
        double thin = halfBehindEdge();
        return mirrored(List.of(
                new Point(reach.edge(), thin),
                new Point((reach.edge() + reach.spine()) / 2, thick),
                new Point(reach.spine(), thin)));
    }

    /** Half the greatest thickness that grind and spine give a section. */
    private double halfByGrind(Reach reach) {
        double share = Math.min(1, reach.mm() / grindMm());
        boolean hollow = knife.shaping().grind().kind() == Grind.Kind.HOLLOW;
        double thin = halfBehindEdge();
        return thin + (hollow ? share * share : share) * (knife.spineThicknessMm() / 2 - thin);
    }

    private double halfBehindEdge() {
        return knife.shaping().grind().kind() == Grind.Kind.SHORT_BEVEL
                ? 0
                : knife.shaping().edgeThicknessMm() / 2;
    }

    /** How far up from the edge the flats are ground. */
    private double grindMm() {
        Grind grind = knife.shaping().grind();
        return grind.hasHeight() ? grind.heightMm() : heightAtHeelMm();
    }

    private double heightAtHeelMm() {
        return knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
    }

    /** One flat from the edge to the spine, and the other, as one boundary; a sharp edge is one point, not two. */
    private static List<Point> mirrored(List<Point> flat) {
        List<Point> boundary = new ArrayList<>();
        for (Point p : flat) {
            boundary.add(new Point(p.x(), -p.y()));
        }
        for (int i = flat.size() - 1; i >= 0; i--) {
            if (flat.get(i).y() > 0) {
                boundary.add(flat.get(i));
            }
        }
        return boundary;
    }

    private List<Point> handle(double xMm, Reach reach) {
        double thickMm = handleThickness.applyAsDouble(knife.landmarks().tip().x() - xMm);
        return new SuperEllipse(reach.mm() / 2, thickMm / 2, knife.shaping().handleExponent())
                .points(new Point((reach.edge() + reach.spine()) / 2, 0), HANDLE_POINTS);
    }

    /** From where to where the knife reaches across its axis, y in mm. */
    private record Reach(double edge, double spine) {
        double mm() {
            return spine - edge;
        }
    }
}
