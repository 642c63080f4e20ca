package weltwright.sheath;

import weltwright.geometry.Placement;
import weltwright.geometry.Point;

/**
 * Where on the flat back something may be sewn or riveted on, in the back's frame: x down to the tip, y to the spine.
 *
 * @param throatMm x of the throat
 * @param lowMm the least y that a stitch or rivet may have, lest the edge come near it
 * @param highMm the greatest
 * @param lengthMm from the throat to the tip
 * @param leanRad by how much what holds the sheath on the belt is turned on the back, counter-clockwise
 */
record BackRoom(double throatMm, double lowMm, double highMm, double lengthMm, double leanRad) {

    double middleMm() {
        return (lowMm + highMm) / 2;
    }

    double widthMm() {
        return highMm - lowMm;
    }

    /** The lean, about a point of the back. */
    Placement leaning(Point about) {
        Point turned = new Placement(leanRad, new Point(0, 0)).apply(about);
        return new Placement(leanRad, about.minus(turned));
    }
}
