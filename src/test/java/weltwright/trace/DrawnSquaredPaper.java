package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Drawn squared paper, a line of it through the ground's origin each way, as large as a picture {@link OverheadScene}
 * shows.
 */
public record DrawnSquaredPaper(double pitchMm) {
    /** How far a place is from the nearest line. */
    public double offLine(Point at) {
        return Math.min(offLine(at.x()), offLine(at.y()));
    }

    /** How far a coordinate is from that of the nearest line. */
    public double offLine(double coordinate) {
        return Math.abs(coordinate - pitchMm * Math.round(coordinate / pitchMm));
    }

    public List<Polyline> lines() {
        List<Polyline> lines = new ArrayList<>();
        for (double at = -50; at <= 50; at += pitchMm) {
            lines.add(Polyline.open(List.of(new Point(at, -55), new Point(at, 55))));
            lines.add(Polyline.open(List.of(new Point(-55, at), new Point(55, at))));
        }
        return lines;
    }
}
