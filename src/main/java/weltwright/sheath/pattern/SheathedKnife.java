package weltwright.sheath.pattern;

import weltwright.geometry.Polyline;
import weltwright.sheath.spec.DrawHand;

/**
 * The outlines of a knife and its sewn sheath, seen from the face with the tip down, in mm, without the belt
 * attachment.
 *
 * @param hand the hand that draws the knife
 * @param sheath outer edge of the sewn sheath, closed
 * @param knife outline of the whole knife, closed, in the same frame
 */
public record SheathedKnife(DrawHand hand, Polyline sheath, Polyline knife) {}
