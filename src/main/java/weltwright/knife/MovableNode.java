package weltwright.knife;

import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;

/**
 * A node of the outline, for where the photo's edge was weak: the curve follows it.
 *
 * @param index of the node
 */
public record MovableNode(int index) implements MovablePoint {
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
        } catch (UserFacingException cannot) {
            return silhouette; // the hand goes on; what it pulls waits where it was
        }
    }
}
