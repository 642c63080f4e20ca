package weltwright.hide;

import java.util.List;
import weltwright.geometry.Polyline;

/**
 * Leather as it was seen in a photo, in mm: from its grain side, with the direction of least stretch along x and the
 * lower left corner of its bounding box at the origin.
 *
 * @param outline its boundary, closed, counter-clockwise
 * @param flaws closed lines round what is not to be used: holes that were found, and what was drawn by hand
 * @param poorer closed lines round poorer leather, drawn by hand
 * @param groundOnLeather whether the ground of known size lies on the leather
 * @param seen where outline and holes are seen in the photo
 * @param mmPerPx size of a pixel of the photo on the ground, by which to judge how exact the outline can be
 */
public record HideTrace(
        Polyline outline,
        List<Polyline> flaws,
        List<Polyline> poorer,
        boolean groundOnLeather,
        Seen seen,
        double mmPerPx) {
    public HideTrace {
        flaws = List.copyOf(flaws);
        poorer = List.copyOf(poorer);
    }

    /**
     * Leather in pixels of the upright photo.
     *
     * @param outline closed
     * @param holes closed lines round the holes that were found
     */
    public record Seen(Polyline outline, List<Polyline> holes) {
        public Seen {
            holes = List.copyOf(holes);
        }
    }
}
