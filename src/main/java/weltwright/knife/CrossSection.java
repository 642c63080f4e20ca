package weltwright.knife;

import java.util.List;
import weltwright.geometry.Point;

/**
 * A knife cut across at one station: a polygon, symmetrical about the mid-plane, and convex but for a hollow grind.
 *
 * @param xMm the station
 * @param part what is cut there
 * @param boundary counter-clockwise, in mm; the first coordinate of each point is the knife's y (towards the spine),
 *     the second its z (across the flats)
 */
public record CrossSection(double xMm, Part part, List<Point> boundary) {

    public CrossSection {
        boundary = List.copyOf(boundary);
    }

    /** A part of a knife. */
    public enum Part {
        BLADE,
        HANDLE
    }

    /** y of its side towards the edge, in mm. */
    public double edgeMm() {
        return boundary.stream().mapToDouble(Point::x).min().orElseThrow();
    }

    /** y of its side towards the spine, in mm. */
    public double spineMm() {
        return boundary.stream().mapToDouble(Point::x).max().orElseThrow();
    }

    /** Greatest thickness across the flats, in mm. */
    public double thicknessMm() {
        return 2 * boundary.stream().mapToDouble(Point::y).max().orElseThrow();
    }
}
