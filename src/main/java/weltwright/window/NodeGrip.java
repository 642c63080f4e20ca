package weltwright.window;

import weltwright.geometry.Outline;
import weltwright.geometry.OutlineEdit;
import weltwright.geometry.Point;
import weltwright.knife.Silhouette;
import weltwright.trouble.Trouble;

/**
 * A node of the outline, for where the photo's edge was weak: the curve follows it.
 *
 * @param index of the node
 */
record NodeGrip(int index) implements Grip {
    @Override
    public Point of(Silhouette silhouette) {
        return silhouette.outline().nodes().get(index).at();
    }

    /**
     * Moved to where it is pulled. A landmark on it goes with it; the others stay on the curve. Where the outline would
     * cross itself, nothing moves.
     */
    @Override
    public Silhouette pulled(Silhouette silhouette, Point to) {
        Point from = of(silhouette);
        try {
            Outline moved = OutlineEdit.moved(silhouette.outline(), index, to);
            return new Silhouette(
                            moved, silhouette.landmarks().map(p -> p.equals(from) ? to : p), silhouette.spineOnLeft())
                    .withOutline(moved);
        } catch (Trouble cannot) {
            return silhouette; // the hand goes on; what it pulls waits where it was
        }
    }
}
