package weltwright.window;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Node;
import weltwright.geometry.Outline;
import weltwright.geometry.Point;
import weltwright.knife.Silhouette;

/**
 * A node of the outline, for where the photo's edge was weak: the curve follows it.
 *
 * @param index of the node
 */
record NodeGrip(int index) implements Grip {
    private static final double STEP_MM = 0.5;
    private static final double LEAST_GAP_MM = 0.2;

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
        List<Node> nodes = new ArrayList<>(silhouette.outline().nodes());
        Node node = nodes.get(index);
        Point before = nodes.get((index + nodes.size() - 1) % nodes.size()).at();
        Point after = nodes.get((index + 1) % nodes.size()).at();
        if (to.distance(before) < LEAST_GAP_MM || to.distance(after) < LEAST_GAP_MM) {
            return silhouette;
        }
        nodes.set(index, new Node(to, node.sharp()));
        Outline outline = new Outline(nodes);
        if (!outline.sampled(STEP_MM).polygon().isValid()) {
            return silhouette;
        }
        Silhouette moved = new Silhouette(
                outline, silhouette.landmarks().map(p -> p.equals(node.at()) ? to : p), silhouette.spineOnLeft());
        for (Place place : Place.values()) {
            if (!place.of(moved).equals(to)) {
                moved = place.pulled(moved, place.of(moved));
            }
        }
        return moved;
    }
}
