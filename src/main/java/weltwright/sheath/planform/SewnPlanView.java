package weltwright.sheath.planform;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A sewn sheath seen from its face, in the knife's frame: the knife lies in it as it is worn. What holds it on the belt
 * is left out.
 *
 * @param outline from the throat round the tip, counter-clockwise; where it is folded, the fold is a part of it
 * @param stitches the holes of its main seam, in the order of sewing
 */
public record SewnPlanView(Polyline outline, List<Point> stitches) {
    public SewnPlanView {
        stitches = List.copyOf(stitches);
    }
}
