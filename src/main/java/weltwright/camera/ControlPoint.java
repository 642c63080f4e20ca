package weltwright.camera;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import weltwright.geometry.Point;

/**
 * A known point of the ground with its pixel; or a point of a straight edge, of which only the distance across the edge
 * is used.
 *
 * @param onGround position in the ground frame, in mm; on an edge, a position on the edge within a few mm
 * @param pixel position in the picture, with a fraction
 * @param edge unit direction of the edge on the ground; empty for a point known in both directions
 */
public record ControlPoint(Point onGround, Point pixel, Optional<Point> edge) {

    /** Makes a control point that is known in both directions. */
    public ControlPoint(Point onGround, Point pixel) {
        this(onGround, pixel, Optional.empty());
    }

    /**
     * Two neighbouring points of a grid.
     *
     * @param middle the middle between them, on the ground
     * @param along unit direction from the one to the other
     */
    public record Neighbours(Point middle, Point along) {}

    /**
     * Returns all pairs of neighbours on a grid whose lines run along the axes.
     *
     * @param stepMm distance of neighbouring points
     */
    public static List<Neighbours> neighbours(List<ControlPoint> grid, double stepMm) {
        STRtree tree = new STRtree();
        grid.forEach(r -> tree.insert(new Envelope(r.onGround().coordinate()), r.onGround()));
        List<Neighbours> pairs = new ArrayList<>();
        for (ControlPoint point : grid) {
            Point from = point.onGround();
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
