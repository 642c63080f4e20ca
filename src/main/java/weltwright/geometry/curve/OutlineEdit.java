package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * What a person does to an {@link Outline}, node by node or a stretch at a time. Each gives another outline that runs
 * counter-clockwise and nowhere crosses itself, or throws {@link UserFacingException} that says why it cannot.
 */
public final class OutlineEdit {
    /** Nodes nearer together than this would be one to the eye, and make the curve between them wild. */
    private static final double LEAST_GAP_MM = 0.2;

    /** A fitted node this near to the one before is the same place. */
    private static final double BESIDE_MM = 0.4;

    private static final double STEP_MM = 0.2;

    /** A redrawn stretch begins and ends at a node that is this near; its own points begin no nearer to its ends. */
    private static final double JOINT_MM = 1.0;

    /** A line that ends beside the outline is led to it over so many times what it is off. */
    private static final double BRIDGE_SLOPE = 3;

    /** A redrawn stretch begins and ends on the outline, give or take what a hand is off. */
    private static final double FARTHEST_END_MM = 5;

    /** As tracing fits its outlines. */
    private static final double TOLERANCE_MM = 0.07;

    private OutlineEdit() {}

    /** One node somewhere else. */
    public static Outline moved(Outline outline, int index, Point to) {
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.set(index, new OutlineNode(to, nodes.get(index).sharp()));
        return checked(nodes);
    }

    /** One more node, smooth, on the curve where it is nearest to a place. */
    public static Outline added(Outline outline, Point near) {
        double best = Double.POSITIVE_INFINITY;
        Point at = near;
        OutlineNode before = null;
        for (List<OutlineNode> stretch : outline.stretches()) {
            Outline.Stretch curve =
                    new Outline.Stretch(stretch.stream().map(OutlineNode::at).toList());
            for (int i = 0; i + 1 < stretch.size(); i++) {
                double t = nearest(curve, curve.knot(i), curve.knot(i + 1), near);
                double distance = curve.at(t).distance(near);
                if (distance < best) {
                    best = distance;
                    at = curve.at(t);
                    before = stretch.get(i);
                }
            }
        }
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.add(nodes.indexOf(before) + 1, new OutlineNode(at, false));
        return checked(nodes);
    }

    /** One node fewer: the curve runs straight on from its neighbour to the next. */
    public static Outline removed(Outline outline, int index) {
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.remove(index);
        return checked(nodes);
    }

    /** A corner where there was none, or none where there was one. */
    public static Outline turned(Outline outline, int index, boolean sharp) {
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.set(index, new OutlineNode(nodes.get(index).at(), sharp));
        return checked(nodes);
    }

    /**
     * A drawn stroke in the sense of the outline that it runs along, counter-clockwise. It is taken to run the shorter
     * way round from its beginning to its end.
     */
    public static Polyline alongside(Outline outline, Polyline stroke) {
        Polyline curve = outline.sampled(STEP_MM);
        List<Point> points = stroke.points();
        double ahead =
                ahead(curve.stationOf(points.get(0)), curve.stationOf(points.get(points.size() - 1)), curve.lengthMm());
        return ahead > curve.lengthMm() / 2 ? stroke.reversed() : stroke;
    }

    /**
     * The outline with a stretch of it run along other points: nodes within the stretch go, new ones are fitted, with a
     * corner where the points turn one; nodes outside stay to the last bit.
     *
     * @param line open, in the sense of the outline, its ends near it; in mm
     */
    public static Outline redrawn(Outline outline, Polyline line) {
        Polyline curve = outline.sampled(STEP_MM);
        double total = curve.lengthMm();
        List<Point> drawn = line.points();
        Joint from = Joint.at(outline, curve, drawn.get(0));
        Joint to = Joint.at(outline, curve, drawn.get(drawn.size() - 1));
        double length = ahead(from.station(), to.station(), total);
        if (length < 2 * JOINT_MM || total - length < 2 * JOINT_MM) {
            throw new UserFacingException(
                    "That stretch is too short to be drawn anew.", "Draw along the edge for some millimetres.");
        }
        Polyline stretch = trimmed(line, from, to).resampled(STEP_MM);
        List<OutlineNode> nodes = new ArrayList<>();
        nodes.add(from.node());
        for (OutlineNode node :
                OutlineFit.fitBetween(stretch.points(), corners(stretch, curve, from, to), TOLERANCE_MM)) {
            Point last = nodes.get(nodes.size() - 1).at();
            // The fit may set one beside a corner or an end, which says all that it says.
            if (node.at().distance(last) > BESIDE_MM && to.awayFrom(node.at()) > BESIDE_MM) {
                nodes.add(node);
            }
        }
        nodes.add(to.node());
        record Kept(OutlineNode node, double aheadMm) {}
        outline.nodes().stream()
                .map(node -> new Kept(node, ahead(to.station(), curve.stationOf(node.at()), total)))
                .filter(kept -> kept.aheadMm() > JOINT_MM / 2 && kept.aheadMm() < total - length - JOINT_MM / 2)
                .sorted(Comparator.comparingDouble(Kept::aheadMm))
                .forEach(kept -> nodes.add(kept.node()));
        return checked(nodes);
    }

    /**
     * Where a redrawn stretch joins the rest: at a node, or a place of the curve that becomes one.
     *
     * @param station along the outline's curve
     * @param bridgeMm over how much of its length the drawn line is left out, for the curve to find its own way from
     *     the rest to it: the farther the line's end is off, the more, so that no step is left there
     */
    private record Joint(OutlineNode node, double station, double bridgeMm) {

        static Joint at(Outline outline, Polyline curve, Point end) {
            double station = curve.stationOf(end);
            Point place = curve.at(station);
            if (place.distance(end) > FARTHEST_END_MM) {
                throw new UserFacingException(
                        "That line neither begins nor ends on the outline.",
                        "Begin where the outline is right, follow the edge, and end where it is right again.");
            }
            double bridge = JOINT_MM + BRIDGE_SLOPE * place.distance(end);
            return outline.nodes().stream()
                    .filter(node -> node.at().distance(place) < JOINT_MM)
                    .min(Comparator.comparingDouble(node -> node.at().distance(place)))
                    .map(node -> new Joint(node, curve.stationOf(node.at()), bridge))
                    .orElse(new Joint(new OutlineNode(place, false), station, bridge));
        }

        double awayFrom(Point p) {
            return p.distance(node.at());
        }
    }

    /** The drawn points without those beside its ends, where the curve is to find its own way over. */
    private static Polyline trimmed(Polyline line, Joint from, Joint to) {
        List<Point> points = new ArrayList<>(List.of(from.node().at()));
        line.points().stream()
                .filter(p -> from.awayFrom(p) > from.bridgeMm() && to.awayFrom(p) > to.bridgeMm())
                .forEach(points::add);
        points.add(to.node().at());
        return Polyline.open(points);
    }

    /** Indices of the stretch's points at corners. They show only where the outline goes on beyond the ends. */
    private static int[] corners(Polyline stretch, Polyline curve, Joint from, Joint to) {
        List<Point> ring = new ArrayList<>(stretch.points());
        List<Point> rest =
                curve.stretch(to.station(), from.station()).resampled(STEP_MM).points();
        ring.addAll(rest.subList(1, rest.size() - 1));
        return new CornerFinder(Polyline.closed(ring))
                .find().stream()
                        .filter(i -> i < stretch.points().size())
                        .filter(i -> from.awayFrom(stretch.points().get(i)) > from.bridgeMm() + JOINT_MM
                                && to.awayFrom(stretch.points().get(i)) > to.bridgeMm() + JOINT_MM)
                        .mapToInt(Integer::intValue)
                        .toArray();
    }

    private static double nearest(Outline.Stretch curve, double from, double to, Point near) {
        double a = from;
        double b = to;
        // Sampled ever closer about the best place; a span between two nodes is no longer than a few centimetres.
        for (int round = 0; round < 8; round++) {
            double low = a;
            double step = (b - a) / 16;
            double best = IntStream.rangeClosed(0, 16)
                    .mapToDouble(k -> low + k * step)
                    .boxed()
                    .min(Comparator.comparingDouble(t -> curve.at(t).distance(near)))
                    .orElseThrow();
            a = Math.max(from, best - step);
            b = Math.min(to, best + step);
        }
        return (a + b) / 2;
    }

    private static double ahead(double from, double to, double total) {
        return to - from - total * Math.floor((to - from) / total);
    }

    private static Outline checked(List<OutlineNode> nodes) {
        if (nodes.size() < 3) {
            throw new UserFacingException(
                    "An outline needs three points at least.", "Pull the point instead of removing it.");
        }
        if (nodes.stream().noneMatch(OutlineNode::sharp)) {
            throw new UserFacingException(
                    "An outline needs one corner at least, such as the knife's tip.",
                    "Make another point a corner first.");
        }
        for (int i = 0; i < nodes.size(); i++) {
            if (nodes.get(i).at().distance(nodes.get((i + 1) % nodes.size()).at()) < LEAST_GAP_MM) {
                throw new UserFacingException(
                        "Two points would lie in one place.", "Keep them apart, or remove one of them.");
            }
        }
        Outline outline = new Outline(nodes);
        Polyline curve = outline.sampled(STEP_MM);
        if (curve.signedAreaMm2() <= 0 || !curve.polygon().isValid()) {
            throw new UserFacingException(
                    "The outline would cross itself.", "Go a smaller step, or begin at another place.");
        }
        return outline;
    }
}
