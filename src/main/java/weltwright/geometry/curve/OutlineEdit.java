package weltwright.geometry.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;

/**
 * Edits an {@link Outline}: moves, adds and removes nodes, and replaces a stretch by a drawn line. Each edit returns a
 * new outline that runs counter-clockwise and does not cross itself, or throws a {@link UserFacingException} with the
 * reason. Distances are chosen by eye.
 */
public final class OutlineEdit {
    private static final Messages TEXTS = Messages.of(OutlineEdit.class);

    /** Least distance of adjacent nodes: nearer ones look like one and make the curve between them oscillate. */
    private static final double LEAST_GAP_MM = 0.2;

    /** Least distance of a fitted node from the one before; a nearer one is left out. */
    private static final double LEAST_FITTED_GAP_MM = 0.4;

    /** Step at which outlines and drawn lines are sampled. */
    private static final double STEP_MM = 0.2;

    /** Distance within which an existing node is used as a joint, and within which the drawn line is not followed. */
    private static final double JOINT_MM = 1.0;

    /**
     * Length over which the curve passes from the outline to the drawn line, per distance of the line's end from it.
     */
    private static final double BRIDGE_SLOPE = 3;

    /** Greatest distance of a drawn line's end from the outline. */
    private static final double FARTHEST_END_MM = 5;

    /** Tolerance of the fit, that of the trace. */
    private static final double TOLERANCE_MM = 0.07;

    private OutlineEdit() {}

    /** Moves a node. */
    public static Outline moved(Outline outline, int index, Point to) {
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.set(index, new OutlineNode(to, nodes.get(index).sharp()));
        return checked(nodes);
    }

    /** Adds a smooth node at the point of the curve that is nearest to a point. */
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

    /** Removes a node. */
    public static Outline removed(Outline outline, int index) {
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.remove(index);
        return checked(nodes);
    }

    /** Makes a node sharp or smooth. */
    public static Outline withSharpness(Outline outline, int index, boolean sharp) {
        List<OutlineNode> nodes = new ArrayList<>(outline.nodes());
        nodes.set(index, new OutlineNode(nodes.get(index).at(), sharp));
        return checked(nodes);
    }

    /**
     * Orients a drawn stroke in the direction of the outline, counter-clockwise, by the shorter way round from the
     * stroke's beginning to its end.
     */
    public static Polyline oriented(Outline outline, Polyline stroke) {
        Polyline curve = outline.sampled(STEP_MM);
        List<Point> points = stroke.points();
        double ahead =
                ahead(curve.stationOf(points.get(0)), curve.stationOf(points.get(points.size() - 1)), curve.lengthMm());
        return ahead > curve.lengthMm() / 2 ? stroke.reversed() : stroke;
    }

    /**
     * Replaces a stretch of the outline by a drawn line. The nodes of the stretch are replaced by nodes fitted to the
     * line, sharp ones at its corners; all other nodes are unchanged.
     *
     * @param line open, in the direction of the outline, its ends within 5 mm of it
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
                    TEXTS.text("outline-edit.that-stretch-is-too-short"),
                    TEXTS.text("outline-edit.draw-along-the-edge-for"));
        }
        Polyline stretch = trimmed(line, from, to).resampled(STEP_MM);
        List<OutlineNode> nodes = new ArrayList<>();
        nodes.add(from.node());
        for (OutlineNode node :
                OutlineFit.fitBetween(stretch.points(), corners(stretch, curve, from, to), TOLERANCE_MM)) {
            Point last = nodes.get(nodes.size() - 1).at();
            if (node.at().distance(last) > LEAST_FITTED_GAP_MM && to.distance(node.at()) > LEAST_FITTED_GAP_MM) {
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
     * The node at which a redrawn stretch joins the rest of the outline, an existing one or a new one on the curve.
     *
     * @param station arc length along the outline's curve, in mm
     * @param bridgeMm length over which the drawn line is not followed; it grows with the distance of the line's end
     *     from the outline, so that the joint has no step
     */
    private record Joint(OutlineNode node, double station, double bridgeMm) {

        static Joint at(Outline outline, Polyline curve, Point end) {
            double station = curve.stationOf(end);
            Point place = curve.at(station);
            if (place.distance(end) > FARTHEST_END_MM) {
                throw new UserFacingException(
                        TEXTS.text("outline-edit.that-line-neither-begins-nor"),
                        TEXTS.text("outline-edit.begin-where-the-outline-is"));
            }
            double bridge = JOINT_MM + BRIDGE_SLOPE * place.distance(end);
            return outline.nodes().stream()
                    .filter(node -> node.at().distance(place) < JOINT_MM)
                    .min(Comparator.comparingDouble(node -> node.at().distance(place)))
                    .map(node -> new Joint(node, curve.stationOf(node.at()), bridge))
                    .orElse(new Joint(new OutlineNode(place, false), station, bridge));
        }

        double distance(Point p) {
            return p.distance(node.at());
        }
    }

    /** The drawn line from joint to joint, without the points on the bridges. */
    private static Polyline trimmed(Polyline line, Joint from, Joint to) {
        List<Point> points = new ArrayList<>(List.of(from.node().at()));
        line.points().stream()
                .filter(p -> from.distance(p) > from.bridgeMm() && to.distance(p) > to.bridgeMm())
                .forEach(points::add);
        points.add(to.node().at());
        return Polyline.open(points);
    }

    /**
     * The indices of the corners of a stretch, except near its joints. The stretch is closed by the rest of the outline
     * for that, since corners are found on closed chains.
     */
    private static int[] corners(Polyline stretch, Polyline curve, Joint from, Joint to) {
        List<Point> ring = new ArrayList<>(stretch.points());
        List<Point> rest =
                curve.stretch(to.station(), from.station()).resampled(STEP_MM).points();
        ring.addAll(rest.subList(1, rest.size() - 1));
        return new CornerFinder(Polyline.closed(ring))
                .find().stream()
                        .filter(i -> i < stretch.points().size())
                        .filter(i -> from.distance(stretch.points().get(i)) > from.bridgeMm() + JOINT_MM
                                && to.distance(stretch.points().get(i)) > to.bridgeMm() + JOINT_MM)
                        .mapToInt(Integer::intValue)
                        .toArray();
    }

    /** The parameter of the point of a span of the curve that is nearest to a point. */
    private static double nearest(Outline.Stretch curve, double from, double to, Point near) {
        double a = from;
        double b = to;
        // Refines a grid of 17 parameters eight times, each time by a factor of 8: far below 1e-6 mm at a span of 100
        // mm.
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

    /** The arc length from one station to another in the direction of a closed curve. */
    private static double ahead(double from, double to, double total) {
        return to - from - total * Math.floor((to - from) / total);
    }

    private static Outline checked(List<OutlineNode> nodes) {
        if (nodes.size() < 3) {
            throw new UserFacingException(
                    TEXTS.text("outline-edit.an-outline-needs-three-points"),
                    TEXTS.text("outline-edit.pull-the-point-instead-of"));
        }
        if (nodes.stream().noneMatch(OutlineNode::sharp)) {
            throw new UserFacingException(
                    TEXTS.text("outline-edit.an-outline-needs-one-corner"),
                    TEXTS.text("outline-edit.make-another-point-a-corner"));
        }
        for (int i = 0; i < nodes.size(); i++) {
            if (nodes.get(i).at().distance(nodes.get((i + 1) % nodes.size()).at()) < LEAST_GAP_MM) {
                throw new UserFacingException(
                        TEXTS.text("outline-edit.two-points-would-lie-in"),
                        TEXTS.text("outline-edit.keep-them-apart-or-remove"));
            }
        }
        Outline outline = new Outline(nodes);
        Polyline curve = outline.sampled(STEP_MM);
        if (curve.signedAreaMm2() <= 0 || !curve.polygon().isValid()) {
            throw new UserFacingException(
                    TEXTS.text("outline-edit.the-outline-would-cross-itself"),
                    TEXTS.text("outline-edit.keep-the-line-clear-of"));
        }
        return outline;
    }
}
