package weltwright.ground;

import java.util.List;
import weltwright.geometry.Polyline;

/**
 * A found ground as lines to be drawn over the photo, so that a wrong pitch or size is seen at a glance.
 *
 * @param lines in the ground frame, in mm
 */
public record GroundLines(List<Polyline> lines, GroundLabel label) {
    public GroundLines {
        lines = List.copyOf(lines);
    }
}
