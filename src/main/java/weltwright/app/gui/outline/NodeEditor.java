package weltwright.app.gui.outline;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.JobModel;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.MovableNode;
import weltwright.knife.Silhouette;

/**
 * Edits the nodes of the job's outline; each edit is an undo step. An edit that would make the outline invalid leaves
 * it unchanged and reports why. Points are in mm in the silhouette frame.
 */
final class NodeEditor {
    /** Sampling of curves; chosen by eye. */
    private static final double STEP_MM = 0.25;

    private final JobModel model;
    private final Consumer<String> errorListener;

    /** @param errorListener receives why an edit was refused, or the empty text where it was not */
    NodeEditor(JobModel model, Consumer<String> errorListener) {
        this.model = model;
        this.errorListener = errorListener;
    }

    List<OutlineNode> nodes() {
        return model.job().silhouette().map(s -> s.outline().nodes()).orElse(List.of());
    }

    OutlineNode node(MovableNode node) {
        return nodes().get(node.index());
    }

    Optional<MovableNode> nearestNode(Point mm, double hitRadiusMm) {
        List<OutlineNode> nodes = nodes();
        return IntStream.range(0, nodes.size())
                .filter(i -> nodes.get(i).at().distance(mm) <= hitRadiusMm)
                .boxed()
                .min(Comparator.comparingDouble(i -> nodes.get(i).at().distance(mm)))
                .map(MovableNode::new);
    }

    /** Returns the node {@code step} places further round the outline. */
    MovableNode nodeAfter(MovableNode node, int step) {
        return new MovableNode(Math.floorMod(node.index() + step, nodes().size()));
    }

    /** Adds a node on the outline nearest to a point and returns it; empty where it was refused. */
    Optional<MovableNode> add(Point near) {
        boolean done = editOutline(outline -> OutlineEdit.added(outline, near));
        return done ? nearestNode(near, Double.MAX_VALUE) : Optional.empty();
    }

    /** Adds a node half-way from a node to the next and returns it; empty where it was refused. */
    Optional<MovableNode> addAfter(MovableNode node) {
        Polyline stretch = stretchBetween(node, nodeAfter(node, 1));
        return add(stretch.at(stretch.lengthMm() / 2));
    }

    /** Removes a node and returns the one before it; empty where it was refused. */
    Optional<MovableNode> remove(MovableNode node) {
        boolean done = editOutline(outline -> OutlineEdit.removed(outline, node.index()));
        return done ? Optional.of(nodeAfter(node, -1)) : Optional.empty();
    }

    /** Makes a corner smooth, or a smooth node a corner. */
    void toggleCorner(MovableNode node) {
        boolean sharp = node(node).sharp();
        editOutline(outline -> OutlineEdit.withSharpness(outline, node.index(), !sharp));
    }

    /** Returns the outline from one node on to another. */
    Polyline stretchBetween(MovableNode from, MovableNode to) {
        Polyline curve = model.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
        return curve.stretch(curve.stationOf(node(from).at()), curve.stationOf(node(to).at()));
    }

    /**
     * Edits the silhouette.
     *
     * @param mergeKey as {@link JobModel#change(Object, UnaryOperator)} takes it
     * @return whether it was done
     */
    boolean edit(@Nullable Object mergeKey, UnaryOperator<Silhouette> edit) {
        errorListener.accept("");
        try {
            model.job().silhouette().map(edit).ifPresent(s -> model.change(mergeKey, job -> job.withSilhouette(s)));
            return true;
        } catch (UserFacingException e) {
            errorListener.accept(e.getMessage());
            return false;
        }
    }

    private boolean editOutline(UnaryOperator<Outline> edit) {
        return edit(null, s -> s.withOutline(edit.apply(s.outline())));
    }
}
