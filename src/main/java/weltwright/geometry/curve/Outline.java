package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.NaturalSpline;

/**
 * A closed curve that a person can edit: a short list of nodes, with a smooth curve through them that may turn a corner
 * at the sharp ones only. Between two sharp nodes it is a natural cubic spline over chord length in each coordinate;
 * two sharp nodes with none between them are joined by a straight line.
 *
 * <p>The same nodes give the same curve to the last bit, so a job that keeps the nodes keeps the pattern.
 *
 * @param nodes in order, counter-clockwise, at least three, at least one of them sharp; no two neighbours in one place
 */
public record Outline(List<OutlineNode> nodes) {

    public Outline {
        nodes = List.copyOf(nodes);
        if (nodes.size() < 3) {
            throw new IllegalArgumentException("an outline of " + nodes.size() + " nodes");
        }
        if (nodes.stream().noneMatch(OutlineNode::sharp)) {
            throw new IllegalArgumentException("an outline without a sharp node");
        }
        for (int i = 0; i < nodes.size(); i++) {
            Point next = nodes.get((i + 1) % nodes.size()).at();
            if (!(nodes.get(i).at().distance(next) > 0)) {
                throw new IllegalArgumentException("two nodes in one place, or a node nowhere, at " + next);
            }
        }
    }

    /** The outline whose every corner is given, joined by straight lines. */
    public static Outline polygon(List<Point> corners) {
        return new Outline(corners.stream().map(p -> new OutlineNode(p, true)).toList());
    }

    /**
     * The curve as a closed chain whose points lie on it, at most {@code stepMm} apart along the chord between two
     * nodes; every node is one of them.
     */
    public Polyline sampled(double stepMm) {
        List<Point> points = new ArrayList<>();
        for (List<OutlineNode> stretch : stretches()) {
            Stretch curve = new Stretch(stretch.stream().map(OutlineNode::at).toList());
            for (int i = 0; i + 1 < stretch.size(); i++) {
                double from = curve.knot(i);
                double to = curve.knot(i + 1);
                int steps = (int) Math.max(1, Math.ceil((to - from) / stepMm));
                points.add(stretch.get(i).at());
                for (int k = 1; k < steps; k++) {
                    points.add(curve.at(from + (to - from) * k / steps));
                }
            }
        }
        return Polyline.closed(points);
    }

    /** The nodes from each sharp node to the next, both of them in; in order round the outline. */
    public List<List<OutlineNode>> stretches() {
        int n = nodes.size();
        int first = 0;
        while (!nodes.get(first).sharp()) {
            first++;
        }
        List<List<OutlineNode>> stretches = new ArrayList<>();
        List<OutlineNode> stretch = new ArrayList<>(List.of(nodes.get(first)));
        for (int i = 1; i <= n; i++) {
            OutlineNode node = nodes.get((first + i) % n);
            stretch.add(node);
            if (node.sharp()) {
                stretches.add(List.copyOf(stretch));
                stretch = new ArrayList<>(List.of(node));
            }
        }
        return stretches;
    }

    /** Each node moved; the motion must keep the sense of turning. */
    public Outline map(UnaryOperator<Point> motion) {
        return new Outline(nodes.stream()
                .map(n -> new OutlineNode(motion.apply(n.at()), n.sharp()))
                .toList());
    }

    /** A smooth curve through points, as {@link Outline} draws it between two sharp nodes. */
    static final class Stretch {
        private final double[] knots;
        private final NaturalSpline x;
        private final NaturalSpline y;

        Stretch(List<Point> through) {
            knots = Polyline.open(through).stationsMm();
            x = new NaturalSpline(knots, through.stream().mapToDouble(Point::x).toArray());
            y = new NaturalSpline(knots, through.stream().mapToDouble(Point::y).toArray());
        }

        double knot(int i) {
            return knots[i];
        }

        Point at(double t) {
            return new Point(x.at(t), y.at(t));
        }
    }
}
