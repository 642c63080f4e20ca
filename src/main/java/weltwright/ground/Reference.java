package weltwright.ground;

import java.util.Optional;
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
public record Reference(Point onGround, Point pixel, Optional<Point> edge) {

    /** A point known in both directions. */
    public Reference(Point onGround, Point pixel) {
        this(onGround, pixel, Optional.empty());
    }
}
