package weltwright.sheath.pattern;

import weltwright.geometry.Polyline;
import weltwright.sheath.spec.DrawHand;

/**
 * The knife in its sewn sheath, seen from the face with the tip down, true to size. What holds it on the belt is left
 * out.
 *
 * @param hand the hand that draws the knife
 * @param sheath the outer edge of the sewn sheath, closed
 * @param knife the outline of the whole knife, closed, in the same frame
 */
public record SheathedKnife(DrawHand hand, Polyline sheath, Polyline knife) {}
