package weltwright.knife;

import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;

/**
 * A node of the outline that the user can move, for places where the edge in the photo was weak.
 *
 * @param index of the node
 */
public record MovableNode(int index) implements MovablePoint {
    @Override
    public Point of(Silhouette silhouette) {
        return silhouette.outline().nodes().get(index).at();
    }

    /**
     * Moves the node to {@code to}. A landmark on the node moves with it; other landmarks stay on the curve. Returns
     * the silhouette unchanged where the outline would cross itself.
     */
    @Override
    public Silhouette pulled(Silhouette silhouette, Point to) {
        Point from = of(silhouette);
        try {
            Outline moved = OutlineEdit.moved(silhouette.outline(), index, to);
            return new Silhouette(
                            moved, silhouette.landmarks().map(p -> p.equals(from) ? to : p), silhouette.spineOnLeft())
                    .withOutline(moved);
        } catch (UserFacingException crossesItself) {
            return silhouette;
        }
    }
}
