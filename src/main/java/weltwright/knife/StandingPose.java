package weltwright.knife;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The pose of a knife that stands upright on a flat ground, on its spine or on its edge. It rests on the edge of its
 * outline's convex hull that lies below its point of balance.
 *
 * <p>A place is given by {@code along}, its distance along the ground from the foot of the heel towards the tip, and by
 * its height over the ground, both in mm.
 */
public final class StandingPose {
    /**
     * Distance of the point of balance behind the heel. Common practice; only the edge of the hull that it selects
     * matters.
     */
    private static final double BALANCE_BEHIND_HEEL_MM = 15;

    /** Spacing of stations along the knife. Chosen by eye. */
    private static final double STEP_MM = 0.5;

    /** The side that a knife stands on. */
    public enum Foot {
        SPINE,
        EDGE
    }

    private final Foot foot;
    private final Point support;
    private final Point along;
    private final double heelAlong;
    private final List<Place> places;

    /**
     * The thickest place of a knife at one station.
     *
     * @param fromTipMm along the knife, as it lies
     * @param alongMm on the ground
     * @param heightMm over the ground
     * @param halfWidthMm half the knife's width there, from its edge to its spine
     * @param part of the knife
     */
    public record Place(
            double fromTipMm, double alongMm, double heightMm, double halfWidthMm, CrossSection.Part part) {}

    /** @param knife spine up, as in {@link Knife} */
    public StandingPose(Knife knife, Foot foot) {
        this.foot = foot;
        Polyline outline = knife.outline().sampled(STEP_MM);
        double heelX = knife.landmarks().heel().x();
        Point[] edge = supportingEdge(outline, heelX - BALANCE_BEHIND_HEEL_MM);
        support = edge[0];
        along = edge[1].minus(edge[0]).unit();
        heelAlong = upright(knife.landmarks().heel()).x();
        places = places(knife, outline);
    }

    /** Maps a point of the knife to the standing frame: x along the ground, y up. */
    private Point upright(Point p) {
        Point from = downward(p).minus(support);
        return new Point(from.dot(along), -along.cross(from));
    }

    /** Mirrors a point so that the side that the knife stands on has positive y. */
    private Point downward(Point p) {
        return foot == Foot.SPINE ? p : new Point(p.x(), -p.y());
    }

    private Point[] supportingEdge(Polyline outline, double balanceX) {
        Coordinate[] points = outline.points().stream()
                .map(this::downward)
                .map(Point::coordinate)
                .toArray(Coordinate[]::new);
        Coordinate[] hull = new ConvexHull(points, outline.polygon().getFactory())
                .getConvexHull()
                .getCoordinates();
        Point[] lowest = null;
        for (int i = 0; i + 1 < hull.length; i++) {
            Coordinate a = hull[i].x < hull[i + 1].x ? hull[i] : hull[i + 1];
            Coordinate b = hull[i].x < hull[i + 1].x ? hull[i + 1] : hull[i];
            boolean below = a.x <= balanceX && balanceX < b.x;
            if (below && (lowest == null || a.y + b.y > lowest[0].y() + lowest[1].y())) {
                lowest = new Point[] {new Point(a.x, a.y), new Point(b.x, b.y)};
            }
        }
        if (lowest == null) {
            throw new IllegalArgumentException("the heel lies behind the butt");
        }
        return lowest;
    }

    private List<Place> places(Knife knife, Polyline outline) {
        OutlineSides sides = new OutlineSides(outline);
        double tipX = knife.landmarks().tip().x();
        double heelX = knife.landmarks().heel().x();
        double buttX = outline.points().stream().mapToDouble(Point::x).min().orElseThrow();
        int count = (int) Math.ceil((tipX - buttX) / STEP_MM);
        Place[] all = new Place[count + 1];
        for (int i = 0; i <= count; i++) {
            double x = Math.max(buttX, tipX - i * STEP_MM);
            boolean blade = x >= heelX;
            // A blade is thickest at its spine, a handle and a blade with two edges half-way up.
            double y = blade && !knife.doubleEdged() ? sides.upper(x) : sides.middle(x);
            Point at = upright(new Point(x, y));
            all[i] = new Place(
                    tipX - x,
                    at.x() - heelAlong,
                    at.y(),
                    sides.width(x) / 2,
                    blade ? CrossSection.Part.BLADE : CrossSection.Part.HANDLE);
        }
        return Arrays.asList(all);
    }

    /** All stations, from the tip to the butt. */
    public List<Place> places() {
        return places;
    }

    /** Returns the station at a distance along the ground; beyond the ends of the knife, the nearest one. */
    public Place at(double alongMm) {
        int low = 0;
        int high = places.size() - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (places.get(middle).alongMm() > alongMm) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return places.get(low);
    }

    /** The tip as it stands. */
    public Place tip() {
        return places.get(0);
    }

    /** The butt as it stands. */
    public Place butt() {
        return places.get(places.size() - 1);
    }
}
