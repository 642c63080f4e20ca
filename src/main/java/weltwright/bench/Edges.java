package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.locationtech.jts.linearref.LengthIndexedLine;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/**
 * The edges of a pattern, found by walking round each piece and asking what the joins do to it there:
 *
 * <ol>
 *   <li>along the row of a stack, on its outer side, the edge is sewn;
 *   <li>along the row of a patch, the patch's own edge lies on leather: its underside is out of reach;
 *   <li>the strap of a folded-back patch, from where it leaves the piece, closes to a loop: its inside is out of reach;
 *   <li>what is left of a piece whose row encloses the knife is the throat: it faces the other layer across the knife's
 *       room, and its inside is out of reach. A gap in the row no longer than the stack is thick is no mouth, and goes with
 *       the stack;
 *   <li>what is left of a layer between others is enclosed;
 *   <li>what is left of a strap that is held at one place only is free, and so is a piece that nothing joins.
 * </ol>
 */
final class Edges {
    private static final double STEP_MM = 0.5;

    /** How much farther than its row's distance an edge may be and still run along it: corners are rounded off. */
    private static final double ALONG_MM = 0.6;

    /** A stretch shorter than this is a corner, and goes with the one before it. */
    private static final double LEAST_MM = 3;

    /** Past the end of its row an edge still belongs to it while it keeps the row's direction within 45 degrees. */
    private static final double SAME_WAY = Math.sqrt(0.5);

    private final Piece piece;
    private final List<Row> rows;
    private final int samples;
    private final double stepMm;
    private final List<Point> points;

    private Edges(Piece piece, List<Join> joins) {
        this.piece = piece;
        rows = new ArrayList<>();
        for (Join join : joins) {
            join.layersOf(piece).forEach(layer -> rows.add(new Row(join, layer, join.row(layer), outside(join, layer))));
        }
        points = piece.outline().resampled(STEP_MM).points();
        samples = points.size();
        stepMm = piece.outline().lengthMm() / samples;
    }

    static List<Edge> of(Pattern pattern) {
        List<Join> joins = Join.of(pattern);
        return pattern.pieces().stream()
                .flatMap(piece -> new Edges(piece, joins).walk().stream())
                .toList();
    }

    /**
     * One layer of one join.
     *
     * @param outside 1 where the sewn edge lies on the left of the row, -1 where it lies on the right
     */
    private record Row(Join join, int layer, Polyline line, int outside) {}

    /** What a point of the cut belongs to; {@code row} is null where nothing joins the piece. */
    private record Owner(EdgeState state, String name, Row row) {}

    private List<Edge> walk() {
        Owner[] owners = new Owner[samples];
        for (int i = 0; i < samples; i++) {
            owners[i] = sewnOrLaid(i);
        }
        ownTheRest(owners);
        swallowCorners(owners);
        List<Edge> edges = new ArrayList<>();
        int start = firstChange(owners);
        for (int from = start; from < start + samples; ) {
            int to = from + 1;
            while (to < start + samples && owners[to % samples].equals(owners[from % samples])) {
                to++;
            }
            Owner owner = owners[from % samples];
            boolean whole = to - from == samples;
            Polyline line = whole
                    ? piece.outline()
                    : piece.outline().part(from % samples * stepMm, to % samples * stepMm);
            edges.add(edge(owner, line));
            from = to;
        }
        return edges;
    }

    private Owner sewnOrLaid(int i) {
        Point p = points.get(i);
        Point along = points.get((i + 1) % samples).minus(points.get((i + samples - 1) % samples)).unit();
        Owner nearest = null;
        double least = Double.POSITIVE_INFINITY;
        for (Row row : rows) {
            if (!row.join.stack() && row.layer != row.join.upper()) {
                continue;
            }
            Foot foot = Foot.of(p, row.line);
            boolean runsAlong = !foot.beyondEnd || Math.abs(foot.along.dot(along)) > SAME_WAY;
            boolean outside = !row.join.isInside(row.layer) || row.outside * foot.along.cross(p.minus(foot.at)) > 0;
            if (foot.distanceMm < least
                    && foot.distanceMm <= row.join.fromEdgeMm() + ALONG_MM
                    && (runsAlong || !row.join.stack())
                    && outside) {
                least = foot.distanceMm;
                nearest = row.join.stack()
                        ? new Owner(EdgeState.SEWN, "edge of the " + row.join.name(), row)
                        : new Owner(EdgeState.OUT_OF_REACH, "end of the " + row.join.name(), row);
            }
        }
        return nearest;
    }

    private void ownTheRest(Owner[] owners) {
        List<int[]> gaps = gaps(owners);
        int longest = gaps.stream().mapToInt(gap -> gap[1] - gap[0]).max().orElse(0);
        for (int[] gap : gaps) {
            Owner before = gap[0] == gap[1] - samples ? null : owners[Math.floorMod(gap[0] - 1, samples)];
            for (int i = gap[0]; i < gap[1]; i++) {
                owners[i % samples] = rest(points.get(i % samples), gap[1] - gap[0], longest, before);
            }
        }
    }

    /** Stretches without an owner: first sample and the one after the last, which may be past the end. */
    private List<int[]> gaps(Owner[] owners) {
        int start = 0;
        while (start < samples && owners[start] == null) {
            start++;
        }
        if (start == samples) {
            return List.<int[]>of(new int[] {0, samples});
        }
        List<int[]> gaps = new ArrayList<>();
        for (int i = start; i < start + samples; i++) {
            int from = i;
            while (i < start + samples && owners[i % samples] == null) {
                i++;
            }
            if (i > from) {
                gaps.add(new int[] {from, i});
            }
        }
        return gaps;
    }

    private Owner rest(Point p, int length, int longest, Owner before) {
        Optional<Row> loop = rows.stream().filter(row -> isOnStrap(row, p)).findFirst();
        if (loop.isPresent()) {
            return new Owner(EdgeState.OUT_OF_REACH, loop.get().join.name(), loop.get());
        }
        Optional<Row> stack = rows.stream()
                .filter(row -> row.join.stack())
                .min((a, b) -> Double.compare(Foot.of(p, a.line).distanceMm, Foot.of(p, b.line).distanceMm));
        if (stack.isEmpty()) {
            return strap();
        }
        if (stack.get().join.isInside(stack.get().layer)) {
            return new Owner(EdgeState.OUT_OF_REACH, "inner edge", stack.get());
        }
        double noMouth = stack.get().join.stackMm() + 4 * stack.get().join.fromEdgeMm();
        if (length < longest && length * stepMm < noMouth && before != null) {
            return before;
        }
        return new Owner(EdgeState.OUT_OF_REACH, "throat", stack.get());
    }

    /** A piece that is in no stack: a loop where it is held at both ends, else free. */
    private Owner strap() {
        List<Row> held = rows.stream().filter(row -> row.layer == row.join.upper()).toList();
        return held.size() > 1
                ? new Owner(EdgeState.OUT_OF_REACH, piece.name(), held.get(0))
                : new Owner(EdgeState.FREE, piece.name(), null);
    }

    /** Whether the cut at this point is a side of the strap that is folded back: between the ends of its fold. */
    private boolean isOnStrap(Row row, Point p) {
        if (row.layer != row.join.upper()) {
            return false;
        }
        Optional<Mark> fold = row.join.fold();
        if (fold.isEmpty()) {
            return false;
        }
        List<Point> ends = fold.get().line().points();
        Point across = ends.get(ends.size() - 1).minus(ends.get(0));
        double along = p.minus(ends.get(0)).dot(across.unit());
        return along > -ALONG_MM && along < across.norm() + ALONG_MM;
    }

    private void swallowCorners(Owner[] owners) {
        int start = firstChange(owners);
        for (int from = start; from < start + samples; ) {
            int to = from + 1;
            while (to < start + samples && Objects.equals(owners[to % samples], owners[from % samples])) {
                to++;
            }
            if ((to - from) * stepMm < LEAST_MM) {
                for (int i = from; i < to; i++) {
                    owners[i % samples] = owners[Math.floorMod(from - 1, samples)];
                }
            }
            from = to;
        }
    }

    private int firstChange(Owner[] owners) {
        for (int i = 0; i < samples; i++) {
            if (!owners[i].equals(owners[Math.floorMod(i - 1, samples)])) {
                return i;
            }
        }
        return 0;
    }

    private Edge edge(Owner owner, Polyline line) {
        boolean sewn = owner.state == EdgeState.SEWN;
        double thickness = sewn ? owner.row.join.stackMm() : piece.thicknessMm();
        return new Edge(
                piece.name(),
                Optional.ofNullable(owner.row).map(row -> row.join.seam().layers().get(row.layer).part()).orElse(""),
                owner.name,
                owner.state,
                line,
                thickness,
                Optional.ofNullable(owner.row).map(row -> row.join.name()),
                treatments(owner, thickness));
    }

    private List<Treatment> treatments(Owner owner, double thicknessMm) {
        if (owner.row != null && owner.row.join.isInside(owner.row.layer)) {
            return List.of();
        }
        List<Treatment> treatments = new ArrayList<>();
        boolean back = owner.row != null && owner.row.join.stack() && owner.row.layer > 0;
        if (!back) {
            boolean ownRow = owner.row != null && !owner.name.equals("throat");
            treatments.add(Treatment.groove(ownRow ? owner.row.join.fromEdgeMm() : EdgeTools.GROOVE_FROM_EDGE_MM));
        }
        if (owner.state == EdgeState.SEWN) {
            treatments.add(Treatment.trim());
            treatments.add(Treatment.bevel(Treatment.Side.OUTSIDE, piece.thicknessMm()));
        } else {
            boolean throat = owner.row != null && owner.row.join.stack();
            treatments.add(
                    Treatment.bevel(throat ? Treatment.Side.OUTSIDE : Treatment.Side.BOTH, piece.thicknessMm()));
        }
        treatments.add(Treatment.burnish(thicknessMm));
        return treatments;
    }

    /**
     * On which side of its row a layer's sewn edge lies. A welt has an edge on both sides of its row; so the first layer of
     * the join is asked, and the answer turned over where the welt is seen from its other face.
     */
    private static int outside(Join join, int layer) {
        Polyline first = join.row(0);
        Point p = join.pieces().get(0).outline().at(nearestOnCut(join.pieces().get(0).outline(), middle(first)));
        Foot foot = Foot.of(p, first);
        boolean left = foot.along.cross(p.minus(foot.at)) > 0;
        boolean turnedOver = sense(first) != sense(join.row(layer));
        return left != turnedOver ? 1 : -1;
    }

    private static Point middle(Polyline row) {
        return row.points().get(row.points().size() / 2);
    }

    private static double nearestOnCut(Polyline cut, Point p) {
        return new LengthIndexedLine(cut.lineString()).project(p.coordinate());
    }

    /** Which way round a row and the chord between its ends run. */
    private static double sense(Polyline row) {
        return Math.signum(Polyline.closed(row.points()).signedAreaMm2());
    }

    /**
     * The point of a row that is nearest to another.
     *
     * @param beyondEnd whether it is an end of the row, and the other point lies past it
     */
    private record Foot(Point at, Point along, double distanceMm, boolean beyondEnd) {
        static Foot of(Point p, Polyline row) {
            List<Point> points = row.points();
            int segments = row.closed() ? points.size() : points.size() - 1;
            Foot nearest = null;
            for (int i = 0; i < segments; i++) {
                Point a = points.get(i);
                Point b = points.get((i + 1) % points.size());
                Point ab = b.minus(a);
                double t = p.minus(a).dot(ab) / ab.dot(ab);
                Point at = a.towards(b, Math.max(0, Math.min(1, t)));
                double distance = at.distance(p);
                if (nearest == null || distance < nearest.distanceMm) {
                    boolean beyond = !row.closed() && (t < 0 && i == 0 || t > 1 && i == segments - 1);
                    nearest = new Foot(at, ab.unit(), distance, beyond);
                }
            }
            return nearest;
        }
    }
}
