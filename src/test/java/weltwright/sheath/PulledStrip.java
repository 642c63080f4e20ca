package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.TautStrip;
import weltwright.geometry.Point;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * How wide leather must be at a station of a sheath: a strip of small links ({@link TautStrip}) pulled tight from
 * stitch to stitch over what passes there, with nothing of the fit's code.
 *
 * @param weltMm thickness of all layers of the welt
 */
public record PulledStrip(SheathSpec spec, double weltMm) {

    /**
     * Half of a folded body, from its stitch to the middle of the fold.
     *
     * @param passing the upper half of all that passes the station, in (y, z), close together or the corners of convex
     *     parts
     * @param stitchMm y of the stitch
     * @param foldMm y of the inside of the fold
     */
    public double foldedHalfMm(List<Point> passing, double stitchMm, double foldMm) {
        return foldedHalfMm(passing, stitchMm, foldMm, 1);
    }

    /**
     * The same where the welt is skived.
     *
     * @param welt how thick it is under the stitch, as a share of its full thickness
     */
    double foldedHalfMm(List<Point> passing, double stitchMm, double foldMm, double welt) {
        Point pin = new Point(stitchMm, welt * weltMm / 2 + neutralMm());
        List<TautStrip.Disc> solid = new ArrayList<>();
        passing.forEach(p -> solid.add(new TautStrip.Disc(p, spec.easeMm() + neutralMm())));
        solid.add(new TautStrip.Disc(new Point(foldMm, 0), neutralMm()));
        // The strip has one height over each place. From the stitch it rises steeply, over a thick handle by more than
        // 45
        // degrees, and it ends straight down; so all is turned until both are as steep.
        double turnRad = (Math.PI / 2 - steepestRad(pin, solid)) / 2;
        return TautStrip.lengthMm(
                turned(pin, turnRad),
                turned(new Point(foldMm + neutralMm(), 0), turnRad),
                solid.stream()
                        .map(disc -> new TautStrip.Disc(turned(disc.at(), turnRad), disc.clearance()))
                        .toList());
    }

    /** Of the lines from a pin that touch one of the discs from above. */
    private static double steepestRad(Point pin, List<TautStrip.Disc> solid) {
        double steepest = 0;
        for (TautStrip.Disc disc : solid) {
            Point off = disc.at().minus(pin);
            if (off.x() > 0 && off.norm() > disc.clearance()) {
                steepest = Math.max(steepest, Math.atan2(off.y(), off.x()) + Math.asin(disc.clearance() / off.norm()));
            }
        }
        return steepest;
    }

    /**
     * The face, from its stitch on the edge's side to that on the spine's.
     *
     * @param passing as above
     * @param edgeStitchMm y of the one
     * @param spineStitchMm y of the other
     */
    public double faceMm(List<Point> passing, double edgeStitchMm, double spineStitchMm) {
        return faceMm(passing, edgeStitchMm, spineStitchMm, spec.kind() == SheathKind.PANELS ? 1 : 0);
    }

    /**
     * The same; near its tip a sheath with a welt along the edge has it at the spine, too.
     *
     * @param spineWelt how thick the welt is under the stitch on the spine's side, as a share of its full thickness
     */
    double faceMm(List<Point> passing, double edgeStitchMm, double spineStitchMm, double spineWelt) {
        double half = weltMm / 2;
        boolean flatBack = spec.leather().bulge() == Leather.Bulge.FACE;
        double highest = passing.stream().mapToDouble(Point::y).max().orElseThrow();
        double lift = flatBack ? Math.max(0, highest + spec.easeMm() - half) : 0;
        double onPanel = flatBack ? -half : 0;
        double spineUp = onPanel + spineWelt * (half - onPanel);
        return TautStrip.lengthMm(
                new Point(edgeStitchMm, half + neutralMm()),
                new Point(spineStitchMm, spineUp + neutralMm()),
                passing.stream().map(p -> p.plus(new Point(0, lift))).toList(),
                spec.easeMm() + neutralMm());
    }

    private double neutralMm() {
        return spec.leather().neutralFactor() * spec.leather().thicknessMm();
    }

    private static Point turned(Point p, double rad) {
        return new Point(p.x() * Math.cos(rad) - p.y() * Math.sin(rad), p.x() * Math.sin(rad) + p.y() * Math.cos(rad));
    }
}
