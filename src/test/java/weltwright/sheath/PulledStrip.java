package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.TautStrip;
import weltwright.geometry.Point;

/**
 * How wide leather must be at a station of a sheath: a strip of small links ({@link TautStrip}) pulled tight from stitch to
 * stitch over what passes there, with nothing of the fit's code.
 *
 * @param weltMm thickness of all layers of the welt
 */
public record PulledStrip(SheathSpec spec, double weltMm) {

    /**
     * Half of a folded body, from its stitch to the middle of the fold.
     *
     * @param passing the upper half of all that passes the station, in (y, z), close together or the corners of convex parts
     * @param stitchMm y of the stitch
     * @param foldMm y of the inside of the fold
     */
    public double foldedHalfMm(List<Point> passing, double stitchMm, double foldMm) {
        double ease = spec.easeMm();
        List<TautStrip.Disc> solid = new ArrayList<>();
        passing.forEach(p -> solid.add(new TautStrip.Disc(slanted(p), ease + neutralMm())));
        solid.add(new TautStrip.Disc(slanted(new Point(foldMm, 0)), neutralMm()));
        // Turned by 45 degrees, for the strip has one height over each place, and here it ends upright.
        return TautStrip.lengthMm(
                slanted(new Point(stitchMm, weltMm / 2 + neutralMm())),
                slanted(new Point(foldMm + neutralMm(), 0)),
                solid);
    }

    /**
     * The face, from its stitch on the edge's side to that on the spine's.
     *
     * @param passing as above
     * @param edgeStitchMm y of the one
     * @param spineStitchMm y of the other
     */
    public double faceMm(List<Point> passing, double edgeStitchMm, double spineStitchMm) {
        double half = weltMm / 2;
        boolean flatBack = spec.leather().bulge() == Leather.Bulge.FACE;
        double highest = passing.stream().mapToDouble(Point::y).max().orElseThrow();
        double lift = flatBack ? Math.max(0, highest + spec.easeMm() - half) : 0;
        double spineUp = spec.kind() == SheathKind.PANELS ? half : flatBack ? -half : 0;
        return TautStrip.lengthMm(
                new Point(edgeStitchMm, half + neutralMm()),
                new Point(spineStitchMm, spineUp + neutralMm()),
                passing.stream().map(p -> p.plus(new Point(0, lift))).toList(),
                spec.easeMm() + neutralMm());
    }

    private double neutralMm() {
        return spec.leather().neutralFactor() * spec.leather().thicknessMm();
    }

    private static Point slanted(Point p) {
        return new Point((p.x() - p.y()) / Math.sqrt(2), (p.x() + p.y()) / Math.sqrt(2));
    }
}
