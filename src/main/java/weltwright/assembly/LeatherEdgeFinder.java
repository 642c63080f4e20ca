package weltwright.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/**
 * Finds the edges of a pattern. The cut of each piece is sampled, each sample is assigned to a join by these rules, and
 * runs of equal assignment become edges:
 *
 * <ol>
 *   <li>along the row of a stack, on its outer side, the edge is sewn;
 *   <li>along the row of a patch, the patch's own edge lies on leather: its underside is out of reach;
 *   <li>the strap of a folded-back patch, from where it leaves the piece, closes to a loop: its inside is out of reach;
 *   <li>what is left of a piece whose row encloses the knife is the throat: it faces the other layer across the knife's
 *       room, and its inside is out of reach; what of it goes on along the knife from the end of the row is an open
 *       side. A gap in the row no longer than the stack is thick is no mouth, and goes with the stack;
 *   <li>what is left of a layer between others is enclosed;
 *   <li>what is left of a strap is a loop where it is held at both ends; held at one place, it is out of reach where it
 *       lies on what holds it, and free beyond; a piece that nothing joins is free all round;
 *   <li>a cover over rivet heads is glued down inside the sheath, and nothing is done to its edge.
 * </ol>
 */
final class LeatherEdgeFinder {
    /** Spacing of samples. Chosen by eye. */
    private static final double STEP_MM = 0.5;

    /** Tolerance of the distance of an edge from its row, for rounded corners. Chosen by eye. */
    private static final double ALONG_MM = 0.6;

    /** A shorter stretch is a corner and is joined to the one before it. Chosen by eye. */
    private static final double LEAST_MM = 3;

    /**
     * Cosine of 45 degrees: past the end of its row an edge belongs to it while it keeps the row's direction within
     * that.
     */
    private static final double SAME_WAY = Math.sqrt(0.5);

    private final Piece piece;
    private final boolean cover;
    private final boolean openForGuard;
    private final List<SewnRow> rows;
    private final List<Hold> holds;
    private final int samples;
    private final double stepMm;
    private final List<Point> points;

    private LeatherEdgeFinder(Piece piece, List<Join> joins, boolean openForGuard) {
        this.piece = piece;
        this.openForGuard = openForGuard;
        cover = piece.kind() == Piece.Kind.RIVET_COVER;
        rows = new ArrayList<>();
        holds = new ArrayList<>();
        for (Join join : joins) {
            join.layersOf(piece)
                    .filter(layer -> !join.stack() && layer != join.under())
                    .forEach(layer -> holds.add(new Hold(join, layer)));
            if (join.seam().isPresent()) {
                join.layersOf(piece).forEach(layer -> rows.add(SewnRow.of(join, layer)));
            }
        }
        points = piece.outline().resampled(STEP_MM).points();
        samples = points.size();
        stepMm = piece.outline().lengthMm() / samples;
    }

    static List<LeatherEdge> of(Pattern pattern, List<Join> joins) {
        boolean openForGuard = pattern.advice().stream().anyMatch(Advice.OpenForGuard.class::isInstance);
        return pattern.pieces().stream()
                .flatMap(piece -> new LeatherEdgeFinder(piece, joins, openForGuard).edges().stream())
                .toList();
    }

    /** A place where a strap is held: one layer of a join that is laid upon another. */
    private record Hold(Join join, int layer) {
        /**
         * Returns whether a point of the strap lies on the leather below, no farther from the holes than that reaches.
         */
        boolean covers(Point p) {
            double reach = join.toCutMm().get(join.under());
            return join.layers().get(layer).holes().stream().anyMatch(hole -> hole.distance(p) <= reach);
        }
    }

    /**
     * The assignment of a point of the cut.
     *
     * @param join empty where nothing joins the piece
     * @param layer of the join, or -1 for the whole piece
     */
    private record Owner(LeatherEdgeState state, LeatherEdge.Kind kind, Optional<Join> join, int layer) {
        static Owner of(LeatherEdgeState state, LeatherEdge.Kind kind, SewnRow row) {
            return new Owner(state, kind, Optional.of(row.join()), row.layer());
        }

        /** Whether it faces the other layer across the room for the knife. */
        boolean isMouth() {
            return kind == LeatherEdge.Kind.THROAT || kind == LeatherEdge.Kind.OPEN_SIDE;
        }

        boolean isInside() {
            return join.isPresent() && join.get().isInside(layer);
        }
    }

    private List<LeatherEdge> edges() {
        Owner[] owners = new Owner[samples];
        int[] nextNear = new int[rows.size()];
        for (int i = 0; i < samples; i++) {
            owners[i] = sewnOrLaid(i, nextNear);
        }
        assignGaps(owners);
        mergeCorners(owners);
        List<LeatherEdge> edges = new ArrayList<>();
        int start = firstChange(owners);
        for (int from = start; from < start + samples; ) {
            int to = from + 1;
            while (to < start + samples && owners[to % samples].equals(owners[from % samples])) {
                to++;
            }
            Owner owner = owners[from % samples];
            boolean whole = to - from == samples;
            Polyline line =
                    whole ? piece.outline() : piece.outline().stretch(from % samples * stepMm, to % samples * stepMm);
            edges.add(edge(owner, line));
            from = to;
        }
        return edges;
    }

    /**
     * @param nextNear for each row the first sample at which it may be near again, as each step comes nearer by no more
     *     than its length
     */
    private @Nullable Owner sewnOrLaid(int i, int[] nextNear) {
        Point p = points.get(i);
        Point along = along(i);
        Owner nearest = null;
        double least = Double.POSITIVE_INFINITY;
        for (int r = 0; r < rows.size(); r++) {
            SewnRow row = rows.get(r);
            if (row.layer() == row.join().under() || i < nextNear[r]) {
                continue;
            }
            FootFinder.Foot foot = row.foot(p);
            double beyond = foot.distanceMm() - row.join().fromEdgeMm() - ALONG_MM;
            nextNear[r] = i + (int) Math.max(0, Math.floor(beyond / stepMm));
            if (beyond > 0 || foot.distanceMm() >= least) {
                continue;
            }
            boolean runsAlong = !foot.beyondEnd() || Math.abs(foot.along().dot(along)) > SAME_WAY;
            if ((runsAlong || !row.join().stack()) && row.isOnSewnSide(p, foot)) {
                least = foot.distanceMm();
                nearest = row.join().stack()
                        ? Owner.of(LeatherEdgeState.SEWN, LeatherEdge.Kind.STACK, row)
                        : Owner.of(LeatherEdgeState.OUT_OF_REACH, LeatherEdge.Kind.JOINED_END, row);
            }
        }
        return nearest;
    }

    private void assignGaps(Owner[] owners) {
        List<int[]> gaps = gaps(owners);
        int longest = gaps.stream().mapToInt(gap -> gap[1] - gap[0]).max().orElse(0);
        for (int[] gap : gaps) {
            Owner before = gap[0] == gap[1] - samples ? null : owners[Math.floorMod(gap[0] - 1, samples)];
            for (int i = gap[0]; i < gap[1]; i++) {
                owners[i % samples] = rest(points.get(i % samples), gap[1] - gap[0], longest, before);
            }
            if (before != null && openForGuard) {
                openSide(owners, gap[0], gap[1], 1);
                openSide(owners, gap[1] - 1, gap[0] - 1, -1);
            }
        }
    }

    /**
     * Assigns the open side of a gap: the part from the end of the row on that runs along the knife, longer than the
     * corner of a throat.
     *
     * @param from the sample next to the row's end
     * @param end the sample past the other end of the gap
     * @param way 1 or -1, from {@code from} to {@code end}
     */
    private void openSide(Owner[] owners, int from, int end, int way) {
        int i = from;
        while (i != end
                && owners[i % samples].kind == LeatherEdge.Kind.THROAT
                && Math.abs(along(i % samples).y()) > SAME_WAY) {
            i += way;
        }
        Owner throat = owners[from % samples];
        if (Math.abs(i - from) * stepMm
                > LEAST_MM + throat.join.map(Join::fromEdgeMm).orElse(0.0)) {
            for (int k = from; k != i; k += way) {
                owners[k % samples] = new Owner(throat.state, LeatherEdge.Kind.OPEN_SIDE, throat.join, throat.layer);
            }
        }
    }

    /** The direction of the cut at a sample. */
    private Point along(int i) {
        return points.get((i + 1) % samples)
                .minus(points.get((i + samples - 1) % samples))
                .unit();
    }

    /** Returns stretches without an assignment: first sample and the one after the last, which may be past the end. */
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

    private Owner rest(Point p, int length, int longest, @Nullable Owner before) {
        Optional<SewnRow> loop = rows.stream().filter(row -> isOnStrap(row, p)).findFirst();
        if (loop.isPresent()) {
            return Owner.of(LeatherEdgeState.OUT_OF_REACH, LeatherEdge.Kind.LOOP, loop.get());
        }
        Optional<SewnRow> stack = rows.stream()
                .filter(row -> row.join().stack())
                .min((a, b) -> Double.compare(a.foot(p).distanceMm(), b.foot(p).distanceMm()));
        if (stack.isEmpty()) {
            return strap(p);
        }
        if (stack.get().join().isInside(stack.get().layer())) {
            return Owner.of(LeatherEdgeState.OUT_OF_REACH, LeatherEdge.Kind.INNER, stack.get());
        }
        double shortestMouth =
                stack.get().join().stackMm() + 4 * stack.get().join().fromEdgeMm();
        if (length < longest && length * stepMm < shortestMouth && before != null) {
            return before;
        }
        return Owner.of(LeatherEdgeState.OUT_OF_REACH, LeatherEdge.Kind.THROAT, stack.get());
    }

    /**
     * Assigns a piece that is in no stack: out of reach where it is held at both ends, as a loop; else free except
     * where it lies on what holds it.
     */
    private Owner strap(Point p) {
        if (cover) {
            return new Owner(LeatherEdgeState.OUT_OF_REACH, LeatherEdge.Kind.ALL, Optional.empty(), -1);
        }
        return holds.stream()
                .filter(hold -> holds.size() > 1 || hold.covers(p))
                .findFirst()
                .map(hold -> new Owner(
                        LeatherEdgeState.OUT_OF_REACH,
                        holds.size() > 1 ? LeatherEdge.Kind.ALL : LeatherEdge.Kind.HELD,
                        Optional.of(hold.join),
                        -1))
                .orElse(new Owner(
                        LeatherEdgeState.FREE,
                        holds.isEmpty() ? LeatherEdge.Kind.ALL : LeatherEdge.Kind.FREE,
                        Optional.empty(),
                        -1));
    }

    /** Returns whether the cut at a point is a side of a strap that is folded back: between the ends of its fold. */
    private boolean isOnStrap(SewnRow row, Point p) {
        if (row.fold().isEmpty()) {
            return false;
        }
        List<Point> ends = row.fold().get().line().points();
        Point across = ends.get(ends.size() - 1).minus(ends.get(0));
        double along = p.minus(ends.get(0)).dot(across.unit());
        return along > -ALONG_MM && along < across.norm() + ALONG_MM;
    }

    private void mergeCorners(Owner[] owners) {
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

    private LeatherEdge edge(Owner owner, Polyline line) {
        boolean sewn = owner.state == LeatherEdgeState.SEWN;
        double thickness = sewn ? owner.join.orElseThrow().stackMm() : piece.thicknessMm();
        return new LeatherEdge(
                piece.name(),
                owner.layer < 0
                        ? LayerPart.WHOLE
                        : owner.join.orElseThrow().layers().get(owner.layer).part(),
                owner.kind,
                owner.state,
                line,
                thickness,
                owner.join.map(Join::name),
                treatments(owner, thickness));
    }

    private List<EdgeTreatment> treatments(Owner owner, double thicknessMm) {
        if (owner.isInside() || cover) {
            return List.of();
        }
        List<EdgeTreatment> treatments = new ArrayList<>();
        boolean stack = owner.join.filter(Join::stack).isPresent();
        if (!stack || owner.layer == 0) {
            boolean stitches = owner.join.flatMap(Join::seam).isPresent() && !owner.isMouth();
            treatments.add(EdgeTreatment.groove(
                    stitches ? owner.join.orElseThrow().fromEdgeMm() : EdgeToolSizes.GROOVE_FROM_EDGE_MM));
        }
        if (owner.state == LeatherEdgeState.SEWN) {
            treatments.add(EdgeTreatment.trim());
            treatments.add(EdgeTreatment.bevel(EdgeTreatment.Side.OUTSIDE, piece.thicknessMm()));
        } else {
            treatments.add(EdgeTreatment.bevel(
                    stack ? EdgeTreatment.Side.OUTSIDE : EdgeTreatment.Side.BOTH, piece.thicknessMm()));
        }
        treatments.add(EdgeTreatment.sand());
        treatments.add(EdgeTreatment.burnish(thicknessMm));
        return treatments;
    }
}
