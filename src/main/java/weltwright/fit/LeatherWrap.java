package weltwright.fit;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;

/**
 * Leather pulled tight over one side of a section, from the stitch where it lies flat on the welt. Points are (y, z) as
 * in {@link weltwright.knife.CrossSection}; the other side is its mirror image.
 *
 * <p>A stitch goes straight through the leather, and so pins its neutral fibre at K · thickness above the welt. From
 * pin to pin the fibre takes the shortest way that leaves the leather its room: it keeps K · thickness from all that
 * stands up between them. So where nothing does, nothing is added; round a corner it is the bend allowance of a sharp
 * bend.
 *
 * @param inside the path of the inside of the leather, from the stitch on the edge's side
 * @param fibre its neutral fibre
 */
public record LeatherWrap(List<Point> inside, TautFibre fibre) {

    public LeatherWrap {
        inside = List.copyOf(inside);
    }

    /**
     * One half of a body that is folded round the spine: from the stitch to the middle of the fold.
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
     * One panel: from the stitch on the edge's side to the stitch on the spine's side, each where it meets the leather.
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

    /** The length of the leather, laid flat. */
    public double flatMm() {
        return fibre.lengthMm();
    }

    /**
     * How much wider the leather must be cut than the way across, on the edge's side of the highest point. What
     * wet-formed leather draws together is added on both sides alike: where it lies straight it has no highest point,
     * and what it is said to have must not leap from one side to the other as soon as it just touches something.
     *
     * @param shrink by what share wet-formed leather draws together
     */
    public double growthOnEdgeSideMm(double shrink) {
        return fibre.risingMm() - (fibre.ridgeMm() - inside.get(0).x()) + drawnTogetherMm(shrink) / 2;
    }

    /** The same on the spine's side. */
    public double growthOnSpineSideMm(double shrink) {
        return fibre.fallingMm() - (inside.get(inside.size() - 1).x() - fibre.ridgeMm()) + drawnTogetherMm(shrink) / 2;
    }

    private double drawnTogetherMm(double shrink) {
        return fibre.lengthMm() * shrink / (1 - shrink);
    }
}
