package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import weltwright.fit.Cavity;
import weltwright.fit.ConvexHull;
import weltwright.fit.LeatherWrap;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.units.UnitAwareException;

/**
 * A sheath in the knife's own plane, as the welt lies in it: cavity, stitch row and outer edge, each the parallel of
 * the one before. All of them are fair because the cavity is: the room that the knife sweeps, with its hollows filled
 * to a wide radius.
 *
 * <p>A folded sheath is worked out together with its mirror image across the fold. So its edge meets the fold square,
 * and runs on smoothly into the other half when it is laid flat.
 */
public final class Planform {
    private static final Messages TEXTS = Messages.of(Planform.class);

    /**
     * A welt that ends where leather lies on leather is skived over so many times its thickness (common practice), but
     * over no more than half of its length.
     */
    private static final double SKIVED_OVER_THICKNESSES = 3;

    /**
     * A welt along the edge alone runs on round the tip, at least so far past it (common practice), and no less than it
     * is skived over: so it is whole as far as the tip, and the leather comes down from it before the row turns.
     */
    private static final double WELT_PAST_TIP_MM = 10;

    /** Stations, about 1 mm apart, over which the strip's direction is taken where it is cut off. */
    private static final int CUT_ALONG = 5;

    /** The same in points of the row, to either side. */
    private static final int CUT_ALONG_ROW = 3;

    /** A throat falls off by no more than this on 1 mm across. */
    private static final double STEEPEST_THROAT = 0.6;

    private static final double SPARE_MM = 0.1;
    private static final double ROW_STEP_MM = 0.5;
    private static final double FAR_MM = 1000;

    private final SheathSpec spec;
    private final double throatMm;
    private final double weltMm;
    private final double foldMm;
    private final double weltPastTipMm;
    private final Optional<Fastener> eyelet;
    private final Point drain;
    private final ThroatCut throat;
    private final Polyline row;
    /** The point of the row at which the welt is cut off. */
    private final int lastOfWelt;

    private final Region outer;
    private final Region welt;
    private final double sewnMm;
    private final double weltedMm;
    private final OpenSides openSides;

    /**
     * @param weltMm thickness of all layers of the welt together
     * @param guard that the sheath is opened for
     */
    public Planform(Cavity cavity, SheathSpec spec, double weltMm, Optional<OutstandingGuard> guard) {
        this.spec = spec;
        this.weltMm = weltMm;
        throatMm = cavity.stationMm(0);
        foldMm = folded() ? cavity.highestSpineMm() + spec.easeMm() : Double.POSITIVE_INFINITY;
        eyelet = spec.drain().eyelet()
                ? Optional.of(spec.hardware()
                        .fastener(Hardware.Kind.EYELET, spec.leather().thicknessMm()))
                : Optional.empty();
        double drainRadius = eyelet.map(Fastener::capMm).orElse(spec.drain().diameterMm()) / 2;
        weltPastTipMm = Math.min(
                Math.max(WELT_PAST_TIP_MM, SKIVED_OVER_THICKNESSES * weltMm),
                (cavity.tip().x() - throatMm) / 2);
        FairCavity fair = new FairCavity(cavity, spec, foldMm, drainRadius, weltEndMm(), weltPastTipMm);
        drain = fair.drain();
        Region room = fair.region();
        Region rows = room.grown(spec.welt().innerMarginMm());
        throat = throat(rows);
        row = rowToItsEnd(rows).resampled(ROW_STEP_MM);
        lastOfWelt = folded() ? lastOfWelt() : row.points().size() - 1;
        if (lastOfWelt == 0
                || weltEndMm() - spec.stitching().marginMm()
                        <= row.points().get(0).y()) {
            throw new UnitAwareException(
                    unit -> TEXTS.text("planform.a-welt-thick-keeps-the", unit.format(weltMm, 1)),
                    unit -> TEXTS.text("planform.choose-fewer-layers-or-thinner"));
        }
        outer = room.grown(spec.welt().innerMarginMm() + spec.stitching().marginMm())
                .intersection(throat.below(0))
                .withCornersRounded(spec.stitching().marginMm());
        Region band = outer.difference(room);
        openSides = guard.map(g -> OpenSides.past(g, row, spec, weltMm)).orElse(OpenSides.none(row));
        sewnMm = folded() ? sewnLength() : openSides.toMm();
        if (spec.kind() == SheathKind.PANELS_EDGE_WELT) {
            welt = openSides.cutOff(band.difference(spineSide(cavity)));
            weltedMm = weltedLength();
        } else {
            welt = openSides.cutOff(folded() ? cutOffBeforeFold(band) : band);
            weltedMm = sewnMm;
        }
        double sewn = Math.min(weltedMm, sewnMm) - openSides.fromMm();
        if (sewn < 4 * spec.stitching().pitchMm()) {
            throw new UnitAwareException(
                    unit -> TEXTS.text("planform.the-stitch-row-would-be", unit.format(Math.max(0, sewn), 0)),
                    unit -> TEXTS.text("planform.choose-a-smaller-pitch-or"));
        }
    }

    public boolean folded() {
        return spec.kind() == SheathKind.FOLDED;
    }

    /** The cut at the throat. */
    public ThroatCut throat() {
        return throat;
    }

    /** y of the inside of the fold; infinite where there is none. */
    public double foldMm() {
        return foldMm;
    }

    public double weltMm() {
        return weltMm;
    }

    /** Middle of the drain hole, in a bay of the cavity of its own; the tip where there is none. */
    public Point drain() {
        return drain;
    }

    /** Diameter of the drain hole; 0 where there is none. */
    public double drainHoleMm() {
        return eyelet.map(Fastener::punchMm).orElse(spec.drain().diameterMm());
    }

    /** What the drain hole is lined with. */
    public Optional<Fastener> eyelet() {
        return eyelet;
    }

    /**
     * The row, from the throat on the edge's side to the throat on the spine's side, or to the fold. It is cut into
     * short pieces of equal length; its outside is on its right.
     */
    public Polyline row() {
        return row;
    }

    /** Where the row is left open for a guard. */
    public OpenSides openSides() {
        return openSides;
    }

    /**
     * Up to where the row is sewn, counted from its first point. A folded sheath is sewn as far as its welt reaches
     * towards the fold.
     */
    public double sewnMm() {
        return sewnMm;
    }

    /** How much of the row, from its first point, runs over the welt. */
    public double weltedMm() {
        return weltedMm;
    }

    /**
     * One half of a folded body, pulled tight over what passes a station, from the welt as thick as it is left there.
     *
     * @param alongMm where the row is there, along it
     * @param edgeMm y of the row there
     */
    LeatherWrap half(double alongMm, double edgeMm, ConvexHull section, Leather leather) {
        Point stitch = new Point(edgeMm, weltShare(alongMm) * weltMm / 2);
        return LeatherWrap.folded(stitch, foldMm, section, leather.neutralMm());
    }

    /**
     * A panel pulled tight over what passes a station. On the spine's side it lies on the welt where there is one, on
     * the other panel where there is none, and on the skived end of the welt in between.
     *
     * @param xMm the station
     * @param edgeMm y of the row there, on the edge's side
     * @param spineMm the same on the spine's side
     * @param alone whether the other panel lies flat, and this one goes round all of the knife
     */
    LeatherWrap panel(double xMm, double edgeMm, double spineMm, ConvexHull section, Leather leather, boolean alone) {
        double half = weltMm / 2;
        // A knife that is thicker than the welt rests on the flat panel, so all of what stands out stands out here.
        double lift = alone ? Math.max(0, section.highestMm() - half) : 0;
        double onPanel = alone ? -half : 0;
        double spineUp = onPanel + spineWeltShare(xMm) * (half - onPanel);
        return LeatherWrap.panel(
                new Point(edgeMm, half), new Point(spineMm, spineUp), section.lifted(lift), leather.neutralMm());
    }

    private double spineWeltShare(double xMm) {
        List<Point> points = row.points();
        int k = points.size() - 1;
        while (k > 0 && points.get(k - 1).x() < xMm) {
            k--;
        }
        return weltShare(k * points.get(0).distance(points.get(1)));
    }

    /** Where the welt begins to be skived down to its end, along the row; infinite where it is whole all along. */
    public double skivedFromMm() {
        if (spec.kind() == SheathKind.PANELS) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.max(weltedMm - SKIVED_OVER_THICKNESSES * weltMm, (openSides.fromMm() + weltedMm) / 2);
    }

    /** How thick the welt is nearest to a point, as a share of its full thickness. */
    double weltShare(Point p) {
        return weltShare(row.stationOf(p));
    }

    /**
     * How thick the welt is under a place on the row, as a share of its full thickness: from where it is skived it
     * falls evenly to nothing at its end.
     */
    private double weltShare(double alongMm) {
        double from = skivedFromMm();
        double end = weltedMm + weltEndMarginMm();
        return alongMm <= from ? 1 : Math.max(0, (end - alongMm) / (end - from));
    }

    /** The sewn sheath's extent, without what holds it on the belt. */
    public Envelope extent() {
        Envelope extent = new Envelope(outer.extent());
        return folded() ? extent.intersection(new Envelope(-FAR_MM, FAR_MM, -FAR_MM, foldMm)) : extent;
    }

    /** The sewn sheath from above: from its outer edge to the fold or to the outer edge on the spine's side. */
    public Region sewn() {
        return folded() ? outer.intersection(Region.box(-FAR_MM, -FAR_MM, FAR_MM, foldMm)) : outer;
    }

    /**
     * From the cavity to the outer edge. In a folded sheath it stops where the leather draws together to the fold, in
     * one without a welt at its spine just past the tip.
     */
    public Region welt() {
        return welt;
    }

    private double weltEndMm() {
        return foldMm - weltMm / 2;
    }

    /** What of the sheath lies on the spine's side of the knife's middle, short of the welt's end past the tip. */
    private Region spineSide(Cavity swept) {
        double end = swept.tip().x() - weltPastTipMm;
        List<Point> edge = swept.sweptEdge().points();
        List<Point> spine = swept.sweptSpine().points();
        List<Point> round = new ArrayList<>();
        round.add(new Point(-FAR_MM, (edge.get(0).y() + spine.get(0).y()) / 2));
        int i = 0;
        while (i + 1 < edge.size() && edge.get(i).x() < end) {
            round.add(edge.get(i).towards(spine.get(i), 0.5));
            i++;
        }
        // Square across the strip, which runs down to the tip there.
        Point across = spine.get(i).minus(spine.get(Math.max(0, i - CUT_ALONG))).left();
        round.add(spine.get(i));
        round.add(spine.get(i).plus(across.unit().times(FAR_MM)));
        round.add(new Point(-FAR_MM, FAR_MM));
        return Region.of(Polyline.closed(round));
    }

    private ThroatCut throat(Region rows) {
        ThroatCut square = ThroatCut.straight(throatMm, foldMm);
        if (spec.throat().shape() == Throat.Shape.STRAIGHT || spec.throat().shape() == Throat.Shape.CURVED) {
            return square;
        }
        Polyline ends = rowToItsEnd(rows, square);
        Point edge = new Point(throatMm, ends.points().get(0).y());
        Point spine = new Point(
                throatMm,
                folded() ? foldMm : ends.points().get(ends.points().size() - 1).y());
        double depth = Math.min(spec.throat().depthMm(), STEEPEST_THROAT * (spine.y() - edge.y()));
        Point down = new Point(depth, 0);
        return spec.throat().shape() == Throat.Shape.SLANTED_TO_EDGE
                ? new ThroatCut(edge.plus(down), spine, foldMm)
                : new ThroatCut(edge, spine.plus(down), foldMm);
    }

    private Polyline rowToItsEnd(Region rows) {
        return rowToItsEnd(rows, throat);
    }

    private Polyline rowToItsEnd(Region rows, ThroatCut cut) {
        Region sewn = cut.below(cut.alongMm(spec.stitching().marginMm()));
        if (folded()) {
            sewn = sewn.intersection(Region.box(-FAR_MM, -FAR_MM, FAR_MM, foldMm));
        }
        Polyline part = rows.boundaryWithin(sewn);
        Point a = part.points().get(0);
        Point b = part.points().get(part.points().size() - 1);
        boolean startsAtEdge = folded() ? a.x() < b.x() : a.y() < b.y();
        return startsAtEdge ? part : part.reversed();
    }

    private double sewnLength() {
        return Math.max(0, row.stationsMm()[lastOfWelt] - spec.stitching().marginMm());
    }

    /** The last point of the row at which a cut square across the welt is clear of where the leather draws together. */
    private int lastOfWelt() {
        int k = row.points().size() - 1;
        while (k > 0 && highestOfCutMm(k) > weltEndMm()) {
            k--;
        }
        return k;
    }

    private double highestOfCutMm(int k) {
        Point across = alongRow(k).left();
        double outside = -spec.stitching().marginMm() * across.y();
        double inside = spec.welt().innerMarginMm() * across.y();
        return row.points().get(k).y() + Math.max(outside, inside);
    }

    private Point alongRow(int k) {
        List<Point> points = row.points();
        Point before = points.get(Math.max(0, k - CUT_ALONG_ROW));
        return points.get(Math.min(points.size() - 1, k + CUT_ALONG_ROW))
                .minus(before)
                .unit();
    }

    /** Square to the row, so that the welt's end has no thin corner. */
    private Region cutOffBeforeFold(Region band) {
        Region half = band.intersection(Region.box(-FAR_MM, -FAR_MM, FAR_MM, foldMm));
        List<Region> parts =
                half.cutInTwo(row.points().get(lastOfWelt), alongRow(lastOfWelt).left());
        Point first = row.points().get(0);
        return parts.get(0).distanceTo(first) <= parts.get(1).distanceTo(first) ? parts.get(0) : parts.get(1);
    }

    /** Up to where the welt's end is a stitch margin away. */
    private double weltedLength() {
        double[] s = row.stationsMm();
        int kept = 0;
        while (s[kept] < openSides.fromMm()) {
            kept++;
        }
        while (kept < row.points().size() && welt.contains(row.points().get(kept), weltEndMarginMm() - SPARE_MM)) {
            kept++;
        }
        return kept == 0 ? 0 : s[kept - 1];
    }

    /** From the last place on the welt that is sewn to its end, along the row. */
    private double weltEndMarginMm() {
        double margin = spec.stitching().marginMm();
        return folded() ? margin : Math.min(margin, spec.welt().innerMarginMm());
    }
}
