package weltwright.fit;

import java.util.List;
import weltwright.geometry.Point;

/**
 * Leather pulled tight over one side of a section, from the stitch where it lies flat on the welt. Points are (y, z) as in
 * {@link weltwright.knife.Section}; the other side is its mirror image.
 *
 * <p>The inside of the leather takes the path of a tight thread. Its neutral fibre runs parallel to that at K · thickness
 * outside, and so is longer by K · thickness times the angle by which the leather turns from end to end (Steiner's
 * formula for an open curve). Turns one way and back cancel: between two stitches on one welt nothing is added, round a
 * fold half a turn for the two sides together.
 *
 * @param inside the path of the inside, from the stitch on the edge's side
 * @param turnRad by how much the leather turns, all in all
 * @param neutralMm from its inside to its neutral fibre: K · thickness
 */
public record Wrap(List<Point> inside, double turnRad, double neutralMm) {

    public Wrap {
        inside = List.copyOf(inside);
    }

    /**
     * One half of a body that is folded round the spine: from the stitch to the middle of the fold.
     *
     * @param stitch on the face of the welt
     * @param foldMm y of the inside of the fold
     */
    public static Wrap folded(Point stitch, double foldMm, Hull section, double neutralMm) {
        List<Point> over = section.corners().stream()
                .map(p -> new Point(Math.min(p.x(), foldMm), p.y()))
                .toList();
        return new Wrap(Hull.thread(stitch, new Point(foldMm, 0), over), Math.PI / 2, neutralMm);
    }

    /** One panel: from the stitch on the edge's side to the stitch on the spine's side, both on the face of the welt. */
    public static Wrap panel(Point edgeStitch, Point spineStitch, Hull section, double neutralMm) {
        return new Wrap(Hull.thread(edgeStitch, spineStitch, section.corners()), 0, neutralMm);
    }

    /** The length of the leather, laid flat. */
    public double flatMm() {
        return insideMm(0, inside.size() - 1) + turnRad * neutralMm;
    }

    /**
     * How much wider the leather must be cut than the way across, on the edge's side of the highest point.
     *
     * @param shrink by what share wet-formed leather draws together
     */
    public double growthOnEdgeSideMm(double shrink) {
        int ridge = ridge();
        return insideMm(0, ridge) / (1 - shrink) - (inside.get(ridge).x() - inside.get(0).x());
    }

    /** The same on the spine's side. */
    public double growthOnSpineSideMm(double shrink) {
        int ridge = ridge();
        int end = inside.size() - 1;
        return insideMm(ridge, end) / (1 - shrink) - (inside.get(end).x() - inside.get(ridge).x());
    }

    private int ridge() {
        int ridge = 0;
        for (int i = 1; i < inside.size(); i++) {
            if (inside.get(i).y() > inside.get(ridge).y()) {
                ridge = i;
            }
        }
        return ridge;
    }

    private double insideMm(int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += inside.get(i).distance(inside.get(i + 1));
        }
        return sum;
    }
}
