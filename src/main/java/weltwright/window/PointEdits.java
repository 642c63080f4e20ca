package weltwright.window;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.Node;
import weltwright.geometry.Outline;
import weltwright.geometry.OutlineEdit;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Silhouette;
import weltwright.trouble.Trouble;

/**
 * Changes to the points of the outline on the bench, each a step that can be undone. What cannot be is refused in plain
 * words. Each gives the point that the hand then holds: none where the change was refused.
 */
final class PointEdits {
    private static final double STEP_MM = 0.25;

    private final Bench bench;
    private final Consumer<String> refuse;

    /** @param refuse told why a change cannot be, or nothing where it was done */
    PointEdits(Bench bench, Consumer<String> refuse) {
        this.bench = bench;
        this.refuse = refuse;
    }

    List<Node> nodes() {
        return bench.job().silhouette().map(s -> s.outline().nodes()).orElse(List.of());
    }

    Node node(NodeGrip grip) {
        return nodes().get(grip.index());
    }

    Optional<NodeGrip> nearest(Point mm, double reachMm) {
        List<Node> nodes = nodes();
        return IntStream.range(0, nodes.size())
                .filter(i -> nodes.get(i).at().distance(mm) <= reachMm)
                .boxed()
                .min(Comparator.comparingDouble(i -> nodes.get(i).at().distance(mm)))
                .map(NodeGrip::new);
    }

    /** The point so many further on round the outline. */
    NodeGrip next(NodeGrip grip, int step) {
        return new NodeGrip(Math.floorMod(grip.index() + step, nodes().size()));
    }

    /** On the line, where it is nearest to a place. */
    Optional<NodeGrip> add(Point near) {
        boolean done = editOutline(outline -> OutlineEdit.added(outline, near));
        return done ? nearest(near, Double.MAX_VALUE) : Optional.empty();
    }

    /** Half-way from a point to the next. */
    Optional<NodeGrip> addAfter(NodeGrip grip) {
        Polyline between = between(grip, next(grip, 1));
        return add(between.at(between.lengthMm() / 2));
    }

    Optional<NodeGrip> remove(NodeGrip grip) {
        boolean done = editOutline(outline -> OutlineEdit.removed(outline, grip.index()));
        return done ? Optional.of(next(grip, -1)) : Optional.empty();
    }

    /** From corner to smooth, or back. */
    void turn(NodeGrip grip) {
        boolean sharp = node(grip).sharp();
        editOutline(outline -> OutlineEdit.turned(outline, grip.index(), !sharp));
    }

    /** The outline from one point on to another. */
    Polyline between(NodeGrip from, NodeGrip to) {
        Polyline curve = bench.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
        return curve.stretch(curve.stationOf(node(from).at()), curve.stationOf(node(to).at()));
    }

    /**
     * Any change of the silhouette.
     *
     * @param source as {@link Bench#change(Object, UnaryOperator)} takes it
     * @return whether it was done
     */
    boolean edit(@Nullable Object source, UnaryOperator<Silhouette> how) {
        refuse.accept("");
        try {
            bench.job().silhouette().map(how).ifPresent(s -> bench.change(source, job -> job.withSilhouette(s)));
            return true;
        } catch (Trouble cannot) {
            refuse.accept(cannot.getMessage());
            return false;
        }
    }

    private boolean editOutline(UnaryOperator<Outline> how) {
        return edit(null, s -> s.withOutline(how.apply(s.outline())));
    }
}
