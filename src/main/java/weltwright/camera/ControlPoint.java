package weltwright.camera;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import weltwright.geometry.Point;

/**
 * A point of the ground whose place is known, and where the picture shows it; or a point of a straight edge of which
 * only the edge is known, not where along it the point lies.
 *
 * @param onGround its place in the ground frame, in mm; on an edge, a place of the edge within a few mm of it
 * @param pixel its place in the picture, in pixels, to a fraction of one
 * @param edge empty for a point; on an edge, the edge's direction on the ground, of length 1, and the pixel then counts
 *     across the edge only
 */
public record ControlPoint(Point onGround, Point pixel, Optional<Point> edge) {

    /** A point known in both directions. */
    public ControlPoint(Point onGround, Point pixel) {
        this(onGround, pixel, Optional.empty());
    }

    /**
     * Two points one step of a grid apart.
     *
     * @param middle half way between them, on the ground
     * @param along from the one to the other, of length 1
     */
    public record Neighbours(Point middle, Point along) {}

    /** All such pairs on a grid whose lines run along the axes. */
    public static List<Neighbours> neighbours(List<ControlPoint> grid, double stepMm) {
        STRtree tree = new STRtree();
        grid.forEach(r -> tree.insert(new Envelope(r.onGround().coordinate()), r.onGround()));
        List<Neighbours> pairs = new ArrayList<>();
        for (ControlPoint reference : grid) {
            Point from = reference.onGround();
            for (Point along : List.of(new Point(1, 0), new Point(0, 1))) {
                Point to = from.plus(along.times(stepMm));
                Envelope near = new Envelope(to.coordinate());
                near.expandBy(stepMm / 10);
                if (!tree.query(near).isEmpty()) {
                    pairs.add(new Neighbours(from.towards(to, 0.5), along));
                }
            }
        }
        return pairs;
    }
}
