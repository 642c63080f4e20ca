package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * The room that the knife sweeps, in its own plane, faired: what stitch row and outer edge are parallels of. It takes
 * in the ease, a round end past the knife's tip and the bay of the drain hole; its hollows are filled to a radius of 25
 * mm. It reaches out of the throat by 200 mm. A folded one is joined to its mirror image across the fold.
 *
 * <p>A folded sheath ends square to its fold, also where the spine falls to the tip and leaves a corner empty. If the
 * row ran from the tip back up along the spine, the flat body would have a notch on the line of its fold, where it
 * would tear, and the row would be sewn across leather that is bent round nothing. {@code Advice.EmptyCorner} tells the
 * maker, who may choose two panels.
 */
final class FairCavity {
    /** A hollow of the outer edge is no tighter than this: a knife can follow it, and the eye too. */
    private static final double FAIR_RADIUS_MM = 25;

    /** Stations of the cavity, about 1 mm apart, to either side of one that its sides are faired with. */
    private static final int FAIRED_OVER = 6;

    /** How far back from the knife's tip the sheath draws together to its own. */
    private static final double NOSE_MM = 30;

    /**
     * The cavity is rounded no tighter than this at its tip, and so is the inside of the welt: an awl's point starts a
     * tear in a sharper corner, and a corner in the inside of a strip is best made by punching a hole and cutting up to
     * it (common practice). Half of a punch of 3.2 mm. Round a drain hole it is wider, {@link #ROUND_DRAIN_MM} more
     * than the hole, 2.5 mm with the usual one of 4 mm: the welt then lies clear of the hole, and water finds its way
     * out past it.
     */
    private static final double LEAST_NOSE_MM = 1.6;

    /** Of leather between the rim of the drain hole and the cavity's side. */
    private static final double ROUND_DRAIN_MM = 0.5;

    /** By so much the two halves of a folded cavity overlap at the fold, that they become one. */
    private static final double OVERLAP_MM = 0.01;

    /** From where two panels meet to the row that sews them together. Common practice; no source. */
    private static final double CLOSE_MM = 1.5;
    /** What two sides of the cavity that cross at a slim tip are joined by: less than any knife cuts true to. */
    private static final double HAIR_MM = 0.01;

    private static final double FAR_MM = 200;

    private final Cavity swept;
    private final SheathSpec spec;
    private final double foldMm;
    private final double weltPastTipMm;
    /** Radius of the room round the drain hole's middle, or round the tip where there is none, before ease is added. */
    private final double bayMm;

    /** The side of the knife from which the spine's row is a parallel. */
    private final Polyline spineSide;

    private final Point drain;
    private final Region region;

    /**
     * @param foldMm y of the inside of the fold; infinite where there is none
     * @param drainRadiusMm of the drain hole, or of the cap that lines it; 0 where there is no hole
     * @param drainHighestMm the greatest y of the drain hole's rim in a folded body
     * @param weltPastTipMm how far from the tip towards the throat a welt runs on at the spine, in a sheath that has
     *     one along the edge alone
     */
    FairCavity(
            Cavity swept,
            SheathSpec spec,
            double foldMm,
            double drainRadiusMm,
            double drainHighestMm,
            double weltPastTipMm) {
        this.swept = swept;
        this.spec = spec;
        this.foldMm = foldMm;
        this.weltPastTipMm = weltPastTipMm;
        double nose = Math.max(LEAST_NOSE_MM, drainRadiusMm == 0 ? 0 : drainRadiusMm + ROUND_DRAIN_MM);
        bayMm = Math.max(0.1, nose - spec.easeMm());
        spineSide = spec.kind() == SheathKind.PANELS_EDGE_WELT ? meetingLine() : swept.sweptSpine();
        drain = drain(drainRadiusMm, drainHighestMm);
        region = faired();
    }

    /** Middle of the drain hole, in a bay of its own; the tip where there is none. */
    Point drain() {
        return drain;
    }

    Region region() {
        return region;
    }

    private boolean folded() {
        return spec.kind() == SheathKind.FOLDED;
    }

    private Point drain(double radius, double highestMm) {
        if (radius == 0) {
            return swept.tip();
        }
        return folded()
                ? DrainPosition.inFold(swept, radius, bayMm, nosePoints(), foldMm, highestMm)
                : DrainPosition.pastTip(swept.tip(), radius);
    }

    private Region faired() {
        List<Point> round = new ArrayList<>(faired(swept.sweptEdge(), -1));
        List<Point> spine = new ArrayList<>(faired(spineSide, 1));
        Collections.reverse(spine);
        round.add(swept.tip());
        round.addAll(spine);
        // Straight on out of the throat, so that all that is parallel to the cavity crosses the throat square.
        round.add(new Point(
                swept.stationMm(0) - FAR_MM, spine.get(spine.size() - 1).y()));
        round.add(new Point(swept.stationMm(0) - FAR_MM, round.get(0).y()));
        Region room = Region.ofCrossing(Polyline.closed(round), HAIR_MM);
        room = room.union(nose());
        if (!folded()) {
            return room.grown(spec.easeMm() + FAIR_RADIUS_MM).grown(-FAIR_RADIUS_MM);
        }
        Region half = room.grown(spec.easeMm() + OVERLAP_MM);
        Region mirrored = Region.of(half.boundary().map(p -> new Point(p.x(), 2 * foldMm - p.y())));
        // Square to the fold between the two tips.
        List<Point> ends = new ArrayList<>();
        for (Region side : List.of(half, mirrored)) {
            side.boundary().points().stream()
                    .filter(p -> p.x() > drain.x() - spec.easeMm())
                    .forEach(ends::add);
        }
        return half.union(mirrored).union(Region.hull(ends)).withNotchesFilled(FAIR_RADIUS_MM);
    }

    /**
     * The side of the knife from which the spine's row is a parallel at the margins of the edge's: where two panels
     * that come together at half a right angle from over the spine meet, and the row a little beyond. Near the tip,
     * where the welt still runs, the spine itself. Nowhere nearer than the tip and the edge behind it pass on their way
     * out: they too must stay a margin away from the stitches there.
     */
    private Polyline meetingLine() {
        List<Point> spine = swept.sweptSpine().points();
        List<Point> meeting = new ArrayList<>();
        double margin = spec.welt().innerMarginMm();
        for (int i = 0; i < swept.size(); i++) {
            double lift = spec.leather().bulge() == Leather.Bulge.FACE
                    ? swept.section(i).highestMm()
                    : 0;
            double meet = swept.section(i).corners().stream()
                    .mapToDouble(p -> p.x() + p.y())
                    .max()
                    .orElseThrow();
            double own = spine.get(i).y();
            double fromTip = (swept.tip().x() - spine.get(i).x() - weltPastTipMm) / NOSE_MM;
            double under = Math.max(0, Math.min(1, fromTip)) * Math.max(0, margin - CLOSE_MM);
            meeting.add(new Point(
                    spine.get(i).x(),
                    Math.max(
                            swept.highestEdgeMm(i),
                            Math.max(meet + lift + CLOSE_MM - spec.easeMm() - margin, own - under))));
        }
        meeting.add(swept.tip());
        return Polyline.open(meeting);
    }

    /** One side of the cavity, its stations in line, without the tip; {@code outwards} is the sign of y outside it. */
    private static List<Point> faired(Polyline side, int outwards) {
        List<Point> points = side.points().subList(0, side.points().size() - 1);
        double[] y = Fairing.faired(
                points.stream().mapToDouble(p -> outwards * p.y()).toArray(), FAIRED_OVER);
        List<Point> fair = new ArrayList<>();
        for (int i = 0; i < y.length; i++) {
            fair.add(new Point(points.get(i).x(), outwards * y[i]));
        }
        return fair;
    }

    /**
     * The last of the knife drawn together with the bay of the drain hole, so that the tip of the sheath has no neck.
     */
    private Region nose() {
        List<Point> points = nosePoints();
        points.addAll(Region.disc(drain, bayMm).boundary().points());
        return Region.hull(points);
    }

    private List<Point> nosePoints() {
        double from = noseFromMm();
        List<Point> points = new ArrayList<>();
        for (Polyline side : List.of(swept.sweptEdge(), spineSide)) {
            side.points().stream().filter(p -> p.x() > from).forEach(points::add);
        }
        return points;
    }

    /**
     * Returns the station from which the sheath draws together to its tip. A slender blade is narrower than the bay for
     * longer than usual: it is drawn together from where it is as wide, or a neck would be left between both.
     */
    private double noseFromMm() {
        List<Point> edge = swept.sweptEdge().points();
        List<Point> spine = spineSide.points();
        int i = swept.size() - 1;
        while (i > 0 && spine.get(i).y() - edge.get(i).y() < 2 * bayMm) {
            i--;
        }
        return Math.min(swept.tip().x() - NOSE_MM, edge.get(i).x() - HAIR_MM);
    }
}
