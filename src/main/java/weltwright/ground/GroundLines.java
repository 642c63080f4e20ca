package weltwright.ground;

import java.util.List;
import weltwright.geometry.Polyline;

/**
 * The lines of a ground, to be drawn over the photo so that the user can see a wrong pitch or size.
 *
 * @param lines in the ground frame, in mm
 */
public record GroundLines(List<Polyline> lines, GroundLabel label) {
    public GroundLines {
        lines = List.copyOf(lines);
    }
}
