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
 * Changes to the points of the outline on the bench, each a step that can be undone. What cannot be is refused in plain
 * words. Each gives the point that the hand then holds: none where the change was refused.
 */
final class NodeEditor {
    private static final double STEP_MM = 0.25;

    private final JobModel bench;
    private final Consumer<String> refuse;

    /** @param refuse told why a change cannot be, or nothing where it was done */
    NodeEditor(JobModel bench, Consumer<String> refuse) {
        this.bench = bench;
        this.refuse = refuse;
    }

    List<OutlineNode> nodes() {
        return bench.job().silhouette().map(s -> s.outline().nodes()).orElse(List.of());
    }

    OutlineNode node(MovableNode grip) {
        return nodes().get(grip.index());
    }

    Optional<MovableNode> nearest(Point mm, double reachMm) {
        List<OutlineNode> nodes = nodes();
        return IntStream.range(0, nodes.size())
                .filter(i -> nodes.get(i).at().distance(mm) <= reachMm)
                .boxed()
                .min(Comparator.comparingDouble(i -> nodes.get(i).at().distance(mm)))
                .map(MovableNode::new);
    }

    /** The point so many further on round the outline. */
    MovableNode next(MovableNode grip, int step) {
        return new MovableNode(Math.floorMod(grip.index() + step, nodes().size()));
    }

    /** On the line, where it is nearest to a place. */
    Optional<MovableNode> add(Point near) {
        boolean done = editOutline(outline -> OutlineEdit.added(outline, near));
        return done ? nearest(near, Double.MAX_VALUE) : Optional.empty();
    }

    /** Half-way from a point to the next. */
    Optional<MovableNode> addAfter(MovableNode grip) {
        Polyline between = between(grip, next(grip, 1));
        return add(between.at(between.lengthMm() / 2));
    }

    Optional<MovableNode> remove(MovableNode grip) {
        boolean done = editOutline(outline -> OutlineEdit.removed(outline, grip.index()));
        return done ? Optional.of(next(grip, -1)) : Optional.empty();
    }

    /** From corner to smooth, or back. */
    void turn(MovableNode grip) {
        boolean sharp = node(grip).sharp();
        editOutline(outline -> OutlineEdit.turned(outline, grip.index(), !sharp));
    }

    /** The outline from one point on to another. */
    Polyline between(MovableNode from, MovableNode to) {
        Polyline curve = bench.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
        return curve.stretch(curve.stationOf(node(from).at()), curve.stationOf(node(to).at()));
    }

    /**
     * Any change of the silhouette.
     *
     * @param source as {@link JobModel#change(Object, UnaryOperator)} takes it
     * @return whether it was done
     */
    boolean edit(@Nullable Object source, UnaryOperator<Silhouette> how) {
        refuse.accept("");
        try {
            bench.job().silhouette().map(how).ifPresent(s -> bench.change(source, job -> job.withSilhouette(s)));
            return true;
        } catch (UserFacingException cannot) {
            refuse.accept(cannot.getMessage());
            return false;
        }
    }

    private boolean editOutline(UnaryOperator<Outline> how) {
        return edit(null, s -> s.withOutline(how.apply(s.outline())));
    }
}
