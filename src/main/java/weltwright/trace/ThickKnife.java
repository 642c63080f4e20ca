package weltwright.trace;

import weltwright.geometry.Point;
import weltwright.ground.Plane;
import weltwright.ground.View;

/**
 * How far outside the mid-plane's outline a thick knife's silhouette lies where it is looked at aslant.
 *
 * <p>At a point of the outline with outward normal n, let a be how far the line of sight leans along n for each mm of
 * height. A square spine of thickness t shows its near or far corner, t/2·|a| outside; t falls off towards the tip. A
 * blade's edge is thin and shows as good as none of that. A handle of elliptic section, half as wide as w and half as
 * thick as c, shows where the line of sight touches it: at √(w² + c²a²) instead of w (the support function of an
 * ellipse). A butt shows the corner of its face as the spine does.
 */
record ThickKnife(double spineThicknessMm, double edgeThicknessMm, double handleThicknessMm) {
    /** Butts are rounded over: the face at the very end is about this part of the handle's thickness. Common practice. */
    private static final double BUTT_PART = 0.67;

    /** What of the knife a point of its outline belongs to. */
    enum Part {
        SPINE,
        EDGE,
        HANDLE
    }

    /**
     * @param at on the mid-plane, in the ground frame
     * @param outward unit normal there, in the ground frame
     * @param acrossness how square the normal stands on the knife's length, from 0 (at the ends) to 1; what a handle's
     *     ends show is {@link #buttExcessMm}'s to say
     * @param halfWidthMm of the knife there
     * @param towardsTip where along the blade, from 0 (heel) to 1 (tip)
     * @return how far to move the point inwards, in mm; not negative
     */
    double excessMm(
            Part part,
            View view,
            Plane midPlane,
            Point at,
            Point outward,
            double acrossness,
            double halfWidthMm,
            double towardsTip) {
        double lean = Math.abs(view.lean(midPlane.over(at)).dot(outward));
        return switch (part) {
            case SPINE -> taper(towardsTip) * spineThicknessMm / 2 * lean;
            case EDGE -> taper(towardsTip) * edgeThicknessMm / 2 * lean;
            case HANDLE ->
                acrossness * acrossness * (Math.hypot(halfWidthMm, handleThicknessMm / 2 * lean) - halfWidthMm);
        };
    }

    /**
     * How far outside the mid-plane's outline the butt's end is seen.
     *
     * @param at the butt, on the mid-plane, in the ground frame
     * @param alongKnife unit vector along the knife there
     */
    double buttExcessMm(View view, Plane midPlane, Point at, Point alongKnife) {
        double lean = view.lean(midPlane.over(at)).dot(alongKnife);
        return BUTT_PART * handleThicknessMm / 2 * Math.abs(lean);
    }

    /** Blades keep their thickness over most of their length and lose it towards the tip. Common practice. */
    private static double taper(double towardsTip) {
        return 1 - Math.pow(Math.max(0, Math.min(1, towardsTip)), 4);
    }
}
