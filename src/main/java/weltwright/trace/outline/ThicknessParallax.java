package weltwright.trace.outline;

import weltwright.geometry.Point;
import weltwright.knife.ThicknessProfile;

/**
 * The displacement of a thick knife's silhouette from its outline in the mid-plane, in an oblique view.
 *
 * <p>A point at height z above the mid-plane appears at its place minus z times the lean of the line of sight, the
 * horizontal displacement for each mm of height. Let n be the outline's outward normal, t its tangent, a the lean along
 * n. Then
 *
 * <ul>
 *   <li>a square spine of thickness T shows its near or far corner, z = ∓T/2: it appears T/2·|a| farther out along n
 *       and T/2·(a/|a|)·lean·t along t; T decreases towards the tip. A blade's edge does the same with its own
 *       thickness;
 *   <li>a handle of elliptic section with half axes w across and c in thickness appears where the line of sight touches
 *       it: √(w² + c²a²) − w farther out along n (the support function of an ellipse). It touches at z = −c²a/√(w² +
 *       c²a²), and is displaced by −z times the lean along t;
 *   <li>a handle's front that stands proud of the blade shows the edge of its section: {@link #frontMm};
 *   <li>a butt shows the edge of its face, by half its thickness times |a| farther out.
 * </ul>
 *
 * @param spineThicknessMm at the heel
 * @param edgeThicknessMm behind the cutting edge at the heel
 * @param handleThicknessMm the greatest
 * @param profile thicknesses measured elsewhere along the knife
 */
public record ThicknessParallax(
        double spineThicknessMm, double edgeThicknessMm, double handleThicknessMm, ThicknessProfile profile) {
    /** Thickness of a butt's face, which is rounded over, as a part of the handle's. Common practice. */
    private static final double BUTT_PART = 0.67;

    /** Thickness of a handle's front as a part of its greatest. Common practice. */
    private static final double FRONT_PART = 0.8;

    /** Lean over which the displacement passes smoothly from one corner of a spine to the other; chosen by eye. */
    private static final double SQUARE_ON = 0.02;

    /**
     * Returns the displacement of a spine or a cutting edge with a square section.
     *
     * @param thicknessMm at that place
     * @param leanAcross lean along the outward normal
     * @param leanAlong lean along the tangent
     */
    static Shift bladeSide(double thicknessMm, double leanAcross, double leanAlong) {
        double half = thicknessMm / 2;
        return new Shift(
                half * Math.abs(leanAcross), half * leanAcross / Math.hypot(leanAcross, SQUARE_ON) * leanAlong);
    }

    /**
     * Returns the displacement of a handle's side.
     *
     * @param thicknessMm at that place
     * @param halfWidthMm half the width there
     * @param leanAcross lean along the outward normal
     * @param leanAlong lean along the tangent
     */
    static Shift handleSide(double thicknessMm, double halfWidthMm, double leanAcross, double leanAlong) {
        double c = thicknessMm / 2;
        double reach = Math.hypot(halfWidthMm, c * leanAcross);
        return new Shift(reach - halfWidthMm, c * c * leanAcross / reach * leanAlong);
    }

    /**
     * Returns the displacement of a handle's front along the knife, towards the tip. The point at height z of its
     * elliptic section, y²/w² + z²/c² = 1, appears at y − z·lean across the knife and at −z·lean along it; of the two
     * points that appear at a place, the one farther towards the tip is visible.
     *
     * @param besideMm distance across the knife from the handle's middle, as it appears
     * @param seenHalfMm half the width of the handle there, as it appears
     * @param lean of the line of sight: x along the knife, y across
     */
    double frontMm(double besideMm, double seenHalfMm, Point lean) {
        double c = FRONT_PART * handleThicknessMm / 2;
        double w2 = Math.max(1, seenHalfMm * seenHalfMm - c * c * lean.y() * lean.y());
        double towards = -Math.signum(lean.x());
        // With z = towards·ζ, the quadratic equation for ζ.
        double square = lean.y() * lean.y() / w2 + 1 / (c * c);
        double half = towards * lean.y() * besideMm / w2;
        double rest = besideMm * besideMm / w2 - 1;
        double zeta = (-half + Math.sqrt(Math.max(0, half * half - square * rest))) / square;
        return Math.abs(lean.x()) * zeta;
    }

    /** Returns the outward displacement of the butt's end for a lean along the knife. */
    public double buttExcessMm(double leanAlongKnife) {
        return BUTT_PART * handleThicknessMm / 2 * Math.abs(leanAlongKnife);
    }

    /**
     * The displacement of the silhouette at a point.
     *
     * @param outMm along the outward normal
     * @param alongMm along the tangent
     */
    public record Shift(double outMm, double alongMm) {
        Shift times(double factor) {
            return new Shift(factor * outMm, factor * alongMm);
        }
    }

    /**
     * Returns the thickness of a blade as a part of that at the heel: most keep it over most of their length and lose
     * it towards the tip. Common practice.
     *
     * @param towardsTip position along the blade, from 0 (heel) to 1 (tip)
     */
    public static double taper(double towardsTip) {
        return 1 - Math.pow(Math.max(0, Math.min(1, towardsTip)), 4);
    }
}
