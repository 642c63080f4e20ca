package weltwright.trace;

import weltwright.geometry.Point;
import weltwright.ground.Plane;
import weltwright.ground.View;

/**
 * How far outside the mid-plane's outline a thick knife's silhouette lies where it is looked at aslant.
 *
 * <p>At a point of the outline with outward normal n, let a be how far the line of sight leans along n for each mm of
 * height. A square spine of thickness t shows its near or far corner, t/2·|a| outside. A blade's edge is thin and shows
 * as good as none of that. A handle of elliptic section, half as wide as w and half as thick as c, shows where the line
 * of sight touches it: at √(w² + c²a²) instead of w (the support function of an ellipse). A butt is rounded over.
 */
record ThickKnife(double spineThicknessMm, double edgeThicknessMm, double handleThicknessMm) {
    /** Butts are rounded so far that the thickness at the very end is about this part of the handle's. Common practice. */
    private static final double BUTT = 0.4;

    /** What of the knife a point of its outline belongs to. */
    enum Part {
        SPINE,
        EDGE,
        HANDLE
    }

    /**
     * @param at on the mid-plane, in the ground frame
     * @param outward unit normal there, in the ground frame
     * @param acrossness how square the normal stands on the knife's length, from 0 (at the ends) to 1
     * @param halfWidthMm of the knife there
     * @return how far to move the point inwards, in mm; not negative
     */
    double excessMm(Part part, View view, Plane midPlane, Point at, Point outward, double acrossness, double halfWidthMm) {
        double lean = Math.abs(view.lean(midPlane.over(at)).dot(outward));
        return switch (part) {
            case SPINE -> spineThicknessMm / 2 * lean;
            case EDGE -> edgeThicknessMm / 2 * lean;
            case HANDLE -> {
                double c = handleThicknessMm / 2;
                double across = Math.hypot(halfWidthMm, c * lean) - halfWidthMm;
                double along = BUTT * c * lean;
                double share = acrossness * acrossness;
                yield share * across + (1 - share) * along;
            }
        };
    }
}
