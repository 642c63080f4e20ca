package weltwright.knife;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import weltwright.geometry.Point;

/**
 * Computes cross-sections of a knife: of the blade on the tip's side of the heel, of the handle on the other.
 *
 * <ul>
 *   <li>The blade is shaped by its {@link Grind}. The two flats keep their angle along the blade, so where it is
 *       narrower than the grind is high, towards its tip, the spine is thinner in proportion.
 *   <li>The handle is a {@link SuperEllipse} as wide as the outline and as thick as the handle.
 *   <li>Measured thicknesses replace both ({@link ThicknessProfile}).
 * </ul>
 */
public final class CrossSections {
    /** Points of a hollow flat and of a handle. Chosen by eye; for their accuracy see {@link SuperEllipse#points}. */
    private static final int HOLLOW_POINTS = 12;

    private static final int HANDLE_POINTS = 96;
    private static final double STEP_MM = 0.25;

    private final Knife knife;
    private final double[] outlineX;
    private final double[] outlineY;
    private final double fromMm;
    private final double toMm;
    private final DoubleUnaryOperator handleThickness;
    private final DoubleUnaryOperator bladeThickness;

    CrossSections(Knife knife) {
        this.knife = knife;
        // Arrays, since each section goes through all points.
        List<Point> outline = knife.outline().sampled(STEP_MM).points();
        outlineX = outline.stream().mapToDouble(Point::x).toArray();
        outlineY = outline.stream().mapToDouble(Point::y).toArray();
        var xs = Arrays.stream(outlineX).summaryStatistics();
        fromMm = xs.getMin();
        toMm = xs.getMax();
        double tip = knife.landmarks().tip().x();
        double overall = tip - fromMm;
        handleThickness = knife.thickness().ofHandle(knife.bladeLengthMm(), overall, knife.handleThicknessMm());
        bladeThickness = knife.thickness()
                .ofBlade(
                        knife.bladeLengthMm(),
                        knife.spineThicknessMm(),
                        fromTip -> 2 * halfByGrind(extentAt(tip - fromTip)));
    }

    /** Returns the greatest x of the knife, at the tip, in mm. */
    public double toMm() {
        return toMm;
    }

    /** Returns the section at a station, which must lie strictly between butt and tip. */
    public CrossSection at(double xMm) {
        Extent extent = extentAt(xMm);
        return xMm < knife.landmarks().heel().x()
                ? new CrossSection(xMm, CrossSection.Part.HANDLE, handle(xMm, extent))
                : new CrossSection(xMm, CrossSection.Part.BLADE, blade(xMm, extent));
    }

    private Extent extentAt(double xMm) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        int from = outlineX.length - 1;
        for (int to = 0; to < outlineX.length; to++) {
            if ((outlineX[from] <= xMm) != (outlineX[to] <= xMm)) {
                double t = (xMm - outlineX[from]) / (outlineX[to] - outlineX[from]);
                double y = outlineY[from] + t * (outlineY[to] - outlineY[from]);
                low = Math.min(low, y);
                high = Math.max(high, y);
            }
            from = to;
        }
        if (low > high) {
            throw new IllegalArgumentException("station " + xMm + " is not between " + fromMm + " and " + toMm);
        }
        return new Extent(low, high);
    }

    private List<Point> blade(double xMm, Extent extent) {
        double fromTipMm = knife.landmarks().tip().x() - xMm;
        double thick = knife.thickness().isEmpty()
                ? halfByGrind(extent)
                : Math.max(halfBehindEdge(), bladeThickness.applyAsDouble(fromTipMm) / 2);
        return knife.doubleEdged() ? doubleEdged(extent, thick) : ground(extent, thick);
    }

    /** @param thick half the greatest thickness of the section */
    private List<Point> ground(Extent extent, double thick) {
        double thin = halfBehindEdge();
        double grindMm = grindMm();
        double up = Math.min(extent.mm(), grindMm);
        boolean hollow = knife.shaping().grind().kind() == Grind.Kind.HOLLOW;
        List<Point> near = new ArrayList<>();
        int steps = hollow ? HOLLOW_POINTS : 1;
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            // The circle of the grinding wheel is approximated by a parabola that is tangent to the mid-plane at the
            // edge.
            double z = thin + (hollow ? share * share : share) * (thick - thin);
            near.add(new Point(extent.edge() + up * share, z));
        }
        if (extent.mm() > grindMm) {
            near.add(new Point(extent.spine(), thick));
        }
        return mirrored(near);
    }

    private List<Point> doubleEdged(Extent extent, double thick) {
        double thin = halfBehindEdge();
        return mirrored(List.of(
                new Point(extent.edge(), thin),
                new Point((extent.edge() + extent.spine()) / 2, thick),
                new Point(extent.spine(), thin)));
    }

    /** Returns half the greatest thickness of a section by grind and spine. */
    private double halfByGrind(Extent extent) {
        double share = Math.min(1, extent.mm() / grindMm());
        boolean hollow = knife.shaping().grind().kind() == Grind.Kind.HOLLOW;
        double thin = halfBehindEdge();
        return thin + (hollow ? share * share : share) * (knife.spineThicknessMm() / 2 - thin);
    }

    private double halfBehindEdge() {
        return knife.shaping().grind().kind() == Grind.Kind.SHORT_BEVEL
                ? 0
                : knife.shaping().edgeThicknessMm() / 2;
    }

    /** Returns the height of the grind from the edge. */
    private double grindMm() {
        Grind grind = knife.shaping().grind();
        return grind.hasHeight() ? grind.heightMm() : heightAtHeelMm();
    }

    private double heightAtHeelMm() {
        return knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
    }

    /**
     * Joins a flat, given from the edge to the spine, and its mirror image to one boundary; a sharp edge is one point.
     */
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

    private List<Point> handle(double xMm, Extent extent) {
        double thickMm = handleThickness.applyAsDouble(knife.landmarks().tip().x() - xMm);
        return new SuperEllipse(extent.mm() / 2, thickMm / 2, knife.shaping().handleExponent())
                .points(new Point((extent.edge() + extent.spine()) / 2, 0), HANDLE_POINTS);
    }

    /** The extent of the knife across its axis, y in mm. */
    private record Extent(double edge, double spine) {
        double mm() {
            return spine - edge;
        }
    }
}
