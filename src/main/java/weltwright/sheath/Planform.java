package weltwright.sheath;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.trouble.Trouble;

/**
 * A sheath in the knife's own plane, as the welt lies in it: cavity, stitch row and outer edge, each the parallel of the
 * one before. All of them are fair because the cavity is: the room that the knife sweeps, with its hollows filled to a wide
 * radius.
 *
 * <p>A folded sheath is worked out together with its mirror image across the fold. So its edge meets the fold square, and
 * runs on smoothly into the other half when it is laid flat.
 */
final class Planform {
    /** A hollow of the outer edge is no tighter than this: a knife can follow it, and the eye too. */
    private static final double FAIR_RADIUS_MM = 25;

    /** Room between the knife's tip and the drain hole, so that the hole does not show the tip. */
    private static final double TIP_TO_DRAIN_MM = 1;

    /** Stations of the cavity, about 1 mm apart, to either side of one that its sides are faired with. */
    private static final int FAIRED_OVER = 6;

    /** How far back from the drain hole the sheath draws together to its tip. */
    private static final double NOSE_MM = 30;

    /** By so much the two halves of a folded cavity overlap at the fold, that they become one. */
    private static final double OVERLAP_MM = 0.01;

    private static final double ROW_STEP_MM = 0.5;
    private static final double FAR_MM = 1000;

    private final SheathSpec spec;
    private final double throatMm;
    private final double weltMm;
    private final double foldMm;
    private final Point drain;
    private final Region cavity;
    private final Polyline row;
    private final Region outer;
    private final double sewnMm;

    /** @param weltMm thickness of all layers of the welt together */
    Planform(Cavity cavity, SheathSpec spec, double weltMm) {
        this.spec = spec;
        this.weltMm = weltMm;
        throatMm = cavity.stationMm(0);
        foldMm = cavity.highestSpineMm() + spec.easeMm();
        double drainRadius = spec.drainHoleDiameterMm() / 2;
        drain = cavity.tip().plus(new Point(drainRadius > 0 ? drainRadius + TIP_TO_DRAIN_MM : 0, 0));
        this.cavity = fairCavity(cavity, drainRadius);
        row = rowToItsEnd().resampled(ROW_STEP_MM);
        outer = this.cavity
                .grown(spec.weltInnerMarginMm() + spec.stitchMarginMm())
                .within(Region.box(throatMm, -FAR_MM, FAR_MM, FAR_MM))
                .withCornersRounded(spec.stitchMarginMm());
        sewnMm = folded() ? sewnLength() : row.lengthMm();
        if (sewnMm < 4 * spec.pitchMm()) {
            throw new Trouble(
                    "The stitch row would be only " + Math.round(sewnMm) + " mm long.",
                    "Choose a smaller pitch, or let the sheath hold more of the knife.");
        }
    }

    boolean folded() {
        return spec.kind() == SheathKind.FOLDED;
    }

    /** x of the throat. */
    double throatMm() {
        return throatMm;
    }

    /** y of the inside of the fold. */
    double foldMm() {
        return foldMm;
    }

    double weltMm() {
        return weltMm;
    }

    /** Middle of the drain hole, just past the tip, in a bay of the cavity of its own. */
    Point drain() {
        return drain;
    }

    /** The knife's room, up to the throat and a good way out of it; for a folded sheath with its mirror image. */
    Region cavity() {
        return cavity;
    }

    /**
     * The row, from the throat on the edge's side to the throat on the spine's side, or to the fold. It is cut into short
     * pieces of equal length; its outside is on its right.
     */
    Polyline row() {
        return row;
    }

    /** How much of the row is sewn. A folded sheath is sewn as far as its welt reaches towards the fold. */
    double sewnMm() {
        return sewnMm;
    }

    /** The sewn sheath's extent, without its belt loop. */
    Envelope extent() {
        Envelope extent = new Envelope(outer.extent());
        return folded() ? extent.intersection(new Envelope(-FAR_MM, FAR_MM, -FAR_MM, foldMm)) : extent;
    }

    /** From the cavity to the outer edge; in a folded sheath it stops where the leather draws together to the fold. */
    Region welt() {
        Region band = outer.minus(cavity);
        return folded() ? band.within(Region.box(throatMm, -FAR_MM, FAR_MM, weltEndMm())) : band;
    }

    private double weltEndMm() {
        return foldMm - weltMm / 2;
    }

    private Region fairCavity(Cavity swept, double drainRadius) {
        List<Point> round = new ArrayList<>(faired(swept.sweptEdge(), -1));
        List<Point> spine = new ArrayList<>(faired(swept.sweptSpine(), 1));
        Collections.reverse(spine);
        round.add(swept.tip());
        round.addAll(spine);
        // Straight on out of the throat, so that all that is parallel to the cavity crosses the throat square.
        round.add(new Point(throatMm - FAR_MM / 5, spine.get(spine.size() - 1).y()));
        round.add(new Point(throatMm - FAR_MM / 5, round.get(0).y()));
        Region room = Region.of(Polyline.closed(round));
        room = room.union(nose(swept, Math.max(0.1, drainRadius + TIP_TO_DRAIN_MM / 2 - spec.easeMm())));
        if (!folded()) {
            return room.grown(spec.easeMm() + FAIR_RADIUS_MM).grown(-FAIR_RADIUS_MM);
        }
        Region half = room.grown(spec.easeMm() + OVERLAP_MM);
        Region mirrored = Region.of(half.boundary().map(p -> new Point(p.x(), 2 * foldMm - p.y())));
        // Wide enough that the hollow between the two tips is filled and not only narrowed.
        return half.union(mirrored).withNotchesFilled(Math.max(FAIR_RADIUS_MM, 1.5 * (foldMm - drain.y())));
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

    /** The last of the knife drawn together with the bay of the drain hole, so that the tip of the sheath has no neck. */
    private Region nose(Cavity swept, double bayRadius) {
        List<Point> points = new ArrayList<>(Region.disc(drain, bayRadius).boundary().points());
        for (Polyline side : List.of(swept.sweptEdge(), swept.sweptSpine())) {
            side.points().stream().filter(p -> p.x() > drain.x() - NOSE_MM).forEach(points::add);
        }
        return Region.hull(points);
    }

    private Polyline rowToItsEnd() {
        double from = throatMm + spec.stitchMarginMm();
        Polyline part = cavity.grown(spec.weltInnerMarginMm())
                .boundaryWithin(Region.box(from, -FAR_MM, FAR_MM, folded() ? foldMm : FAR_MM));
        Point a = part.points().get(0);
        Point b = part.points().get(part.points().size() - 1);
        boolean startsAtEdge = folded() ? a.x() < b.x() : a.y() < b.y();
        return startsAtEdge ? part : part.reversed();
    }

    private double sewnLength() {
        double lastHole = weltEndMm() - spec.stitchMarginMm();
        double[] s = row.stationsMm();
        int i = row.points().size() - 1;
        while (i > 0 && row.points().get(i).y() > lastHole) {
            i--;
        }
        return s[i];
    }
}
