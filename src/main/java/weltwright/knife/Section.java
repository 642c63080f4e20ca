package weltwright.knife;

import java.util.List;
import weltwright.geometry.Point;

/**
 * A knife cut across at one station: a convex polygon, symmetrical about the mid-plane.
 *
 * @param xMm the station
 * @param part what is cut there
 * @param boundary counter-clockwise, in mm; the first coordinate of each point is the knife's y (towards the spine), the
 *     second its z (across the flats)
 */
public record Section(double xMm, Part part, List<Point> boundary) {

    public Section {
        boundary = List.copyOf(boundary);
    }

    /** A part of a knife. */
    public enum Part {
        BLADE,
        HANDLE
    }

    /** Greatest thickness across the flats, in mm. */
    public double thicknessMm() {
        return 2 * boundary.stream().mapToDouble(Point::y).max().orElseThrow();
    }
}
