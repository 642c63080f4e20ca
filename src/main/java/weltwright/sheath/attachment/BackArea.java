package weltwright.sheath.attachment;

import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.sheath.planform.ThroatCut;

/**
 * The area of the flat back on which something may be sewn or riveted, or from which it may extend above the throat. In
 * the back's frame: x down to the tip, y to the spine.
 *
 * @param throatMm x of the deepest point of the throat
 * @param lowMm least y of a stitch or rivet, at a safe distance from the edge
 * @param highMm greatest y of a stitch or rivet
 * @param lengthMm from the throat to the tip
 * @param leanRad angle of the belt attachment on the back, counter-clockwise
 * @param cut the cut at the throat
 * @param fromMm y at which the throat begins, at the outer edge on the edge's side
 * @param toMm y at which it ends: at the fold, or at the outer edge on the spine's side
 */
public record BackArea(
        double throatMm,
        double lowMm,
        double highMm,
        double lengthMm,
        double leanRad,
        ThroatCut cut,
        double fromMm,
        double toMm) {

    double middleMm() {
        return (lowMm + highMm) / 2;
    }

    double widthMm() {
        return highMm - lowMm;
    }

    /** Returns the area for an attachment that does not lean. */
    BackArea upright() {
        return new BackArea(throatMm, lowMm, highMm, lengthMm, 0, cut, fromMm, toMm);
    }

    /** Returns the greatest width of a leaning rectangle of a given height in the area. */
    double widthBesideMm(double heightMm) {
        return (widthMm() - heightMm * Math.abs(Math.sin(leanRad))) / Math.cos(leanRad);
    }

    /** Returns the rotation by the lean about a point of the back. */
    RigidMotion leaning(Point about) {
        Point turned = new RigidMotion(leanRad, new Point(0, 0)).apply(about);
        return new RigidMotion(leanRad, about.minus(turned));
    }

    /**
     * Returns where the fillet at the foot of an extension above the throat ends on the throat.
     *
     * @param side a point on the side of the extension
     * @param way 1 for its side towards the spine, -1 for that towards the edge
     * @param filletMm radius of the fillet between that side and the throat
     * @return y of the fillet's end
     */
    double footMm(Point side, int way, double filletMm) {
        Point up = new RigidMotion(leanRad, new Point(0, 0)).apply(new Point(-1, 0));
        double slope = cut.slope();
        double toThroat = (side.x() - cut.atMm(side.y())) / (slope * up.y() - up.x());
        double corner = side.y() + toThroat * up.y();
        Point along = new Point(slope, 1).times(way).unit();
        double notch = Math.acos(Math.max(-1, Math.min(1, along.dot(up))));
        return corner + along.y() * filletMm / Math.tan(notch / 2);
    }
}
