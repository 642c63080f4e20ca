package weltwright.ground;

import java.util.List;
import weltwright.geometry.Polyline;

/**
 * A found ground as lines to be drawn over the photo, so that a wrong pitch or size is seen at a glance.
 *
 * @param lines in the ground frame, in mm
 * @param words what they show, with the length that was taken for true: "each square is 10 mm"
 */
public record GroundSketch(List<Polyline> lines, String words) {
    public GroundSketch {
        lines = List.copyOf(lines);
    }
}
