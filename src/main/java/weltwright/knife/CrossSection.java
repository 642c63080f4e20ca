package weltwright.knife;

import java.util.List;
import weltwright.geometry.Point;

/**
 * The cross-section of a knife at one station: a polygon, symmetrical about the mid-plane, convex except for a hollow
 * grind.
 *
 * @param xMm the station
 * @param part the part of the knife there
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

    /** Returns the least y of the section, on the edge's side, in mm. */
    public double edgeMm() {
        return boundary.stream().mapToDouble(Point::x).min().orElseThrow();
    }

    /** Returns the greatest y of the section, on the spine's side, in mm. */
    public double spineMm() {
        return boundary.stream().mapToDouble(Point::x).max().orElseThrow();
    }

    /** Returns the greatest thickness across the flats, in mm. */
    public double thicknessMm() {
        return 2 * boundary.stream().mapToDouble(Point::y).max().orElseThrow();
    }
}
