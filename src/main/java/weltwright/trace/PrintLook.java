package weltwright.trace;

import java.util.List;
import weltwright.geometry.Point;

/**
 * What the ground's own print says of what lies on it: a shadow lets it through, a knife hides it.
 *
 * @param sights where it can be told with confidence; points where it cannot are left out
 * @param lineColour the colour of the bare ground less that of its lines where they are seen: blue, green, red
 */
record PrintLook(List<Sight> sights, double[] lineColour) {

    /**
     * @param at a point of the ground, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    record Sight(Point at, boolean visible) {}
}
