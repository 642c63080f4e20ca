package weltwright.fit;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;

/**
 * Leather pulled tight over one side of a section, from the stitch on the welt. Points are (y, z) as in
 * {@link weltwright.knife.CrossSection}; the other side is the mirror image.
 *
 * <p>A stitch pins the neutral fibre at K · thickness above the welt. Between pins the fibre takes the shortest path
 * that keeps K · thickness from all points between them. So over a flat section nothing is added, and round a corner
 * the length is the bend allowance of a sharp bend.
 *
 * @param inside path of the inside of the leather, from the stitch on the edge's side
 * @param fibre its neutral fibre
 */
public record LeatherWrap(List<Point> inside, TautFibre fibre) {

    public LeatherWrap {
        inside = List.copyOf(inside);
    }

    /**
     * Wraps one half of a body that is folded round the spine, from the stitch to the middle of the fold.
     *
     * @param stitch on the face of the welt
     * @param foldMm y of the inside of the fold
     */
    public static LeatherWrap folded(Point stitch, double foldMm, ConvexHull section, double neutralMm) {
        Point fold = new Point(foldMm, 0);
        List<Point> over = new ArrayList<>(List.of(fold));
        section.corners().forEach(p -> over.add(new Point(Math.min(p.x(), foldMm), p.y())));
        return of(stitch, fold, new Point(foldMm + neutralMm, 0), over, neutralMm);
    }

    /**
     * Wraps one panel, from the stitch on the edge's side to that on the spine's side, each where it meets the leather.
     */
    public static LeatherWrap panel(Point edgeStitch, Point spineStitch, ConvexHull section, double neutralMm) {
        Point pin = spineStitch.plus(new Point(0, neutralMm));
        return of(edgeStitch, spineStitch, pin, section.corners(), neutralMm);
    }

    private static LeatherWrap of(Point stitch, Point end, Point endOfFibre, List<Point> over, double neutralMm) {
        Point pin = stitch.plus(new Point(0, neutralMm));
        return new LeatherWrap(
                ConvexHull.thread(stitch, end, over), TautFibre.between(pin, endOfFibre, over, neutralMm));
    }

    /** Returns the flat length of the leather. */
    public double flatMm() {
        return fibre.lengthMm();
    }

    /**
     * Returns how much wider the leather must be cut than the distance across, on the edge's side of the highest point.
     * Half of the shrinkage of wet-formed leather is added on either side, so that the two values are continuous where
     * leather that lies straight just touches something.
     *
     * @param shrink share of its length by which wet-formed leather shrinks
     */
    public double growthOnEdgeSideMm(double shrink) {
        return fibre.risingMm() - (fibre.ridgeMm() - inside.get(0).x()) + shrinkageMm(shrink) / 2;
    }

    /** Returns the same on the spine's side of the highest point. */
    public double growthOnSpineSideMm(double shrink) {
        return fibre.fallingMm() - (inside.get(inside.size() - 1).x() - fibre.ridgeMm()) + shrinkageMm(shrink) / 2;
    }

    private double shrinkageMm(double shrink) {
        return fibre.lengthMm() * shrink / (1 - shrink);
    }
}
