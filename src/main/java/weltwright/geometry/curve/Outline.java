package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.NaturalSpline;

/**
 * A closed curve through a short list of nodes that a user can edit. Between two sharp nodes it is a natural cubic
 * spline over chord length in each coordinate; at a sharp node it may have a corner. Two adjacent sharp nodes are
 * joined by a straight line.
 *
 * <p>The curve depends on the nodes alone, so a job stores the nodes only.
 *
 * @param nodes in order, counter-clockwise, at least three, at least one of them sharp; no two adjacent nodes coincide
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

    /** A polygon: an outline with sharp nodes only. */
    public static Outline polygon(List<Point> corners) {
        return new Outline(corners.stream().map(p -> new OutlineNode(p, true)).toList());
    }

    /**
     * Samples the curve.
     *
     * @param stepMm greatest step in chord length between two samples
     * @return a closed chain of points on the curve, every node among them
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

    /** The nodes from each sharp node to the next, both included; in order round the outline. */
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

    /** Transforms each node. The transformation must preserve orientation. */
    public Outline map(UnaryOperator<Point> motion) {
        return new Outline(nodes.stream()
                .map(n -> new OutlineNode(motion.apply(n.at()), n.sharp()))
                .toList());
    }

    /** The smooth part of an outline between two sharp nodes, parametrized by chord length from the first, in mm. */
    static final class Stretch {
        private final double[] knots;
        private final NaturalSpline x;
        private final NaturalSpline y;

        Stretch(List<Point> through) {
            knots = Polyline.open(through).stationsMm();
            x = new NaturalSpline(knots, through.stream().mapToDouble(Point::x).toArray());
            y = new NaturalSpline(knots, through.stream().mapToDouble(Point::y).toArray());
        }

        /** The chord length from the first node to node {@code i}, in mm. */
        double knot(int i) {
            return knots[i];
        }

        /** @param t from 0 to the last knot */
        Point at(double t) {
            return new Point(x.at(t), y.at(t));
        }
    }
}
