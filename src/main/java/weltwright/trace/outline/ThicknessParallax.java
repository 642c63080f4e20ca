package weltwright.trace.outline;

import weltwright.geometry.Point;
import weltwright.knife.ThicknessProfile;

/**
 * How a thick knife's silhouette departs from its outline in the mid-plane where it is looked at aslant.
 *
 * <p>A point z above the mid-plane is seen as if at its place less z times the lean of the line of sight: how far that
 * leans over for each mm of height. Let n be the outline's outward normal, t its tangent, a the lean along n. Then
 *
 * <ul>
 *   <li>a square spine of thickness T shows its near or far corner, z = ∓T/2: it is seen T/2·|a| farther out along n
 *       and T/2·(a/|a|)·lean·t along t; T falls off towards the tip. A blade's edge does the same with its own
 *       thickness;
 *   <li>a handle of elliptic section, half as wide as w and half as thick as c, shows where the line of sight touches
 *       it: √(w² + c²a²) − w farther out along n (the support function of an ellipse), and since it touches at z =
 *       −c²a/√(w² + c²a²), that times the lean along t;
 *   <li>a handle's front, where it stands proud of the blade, shows the rim of its section: {@link #frontMm};
 *   <li>a butt shows the rim of its face, half as thick as that times |a| farther out.
 * </ul>
 *
 * @param profile what was measured of its thickness elsewhere along it
 */
public record ThicknessParallax(
        double spineThicknessMm, double edgeThicknessMm, double handleThicknessMm, ThicknessProfile profile) {
    /**
     * Butts are rounded over: the face at the very end is about this part of the handle's thickness. Common practice.
     */
    private static final double BUTT_PART = 0.67;

    /** Handles are a little thinner at their front than at their thickest. Common practice. */
    private static final double FRONT_PART = 0.8;

    /** Where a line of sight leans less than this, which corner of a spine shows is not told apart. */
    private static final double SQUARE_ON = 0.02;

    /**
     * What is seen of a square rim, a spine or an edge.
     *
     * @param thicknessMm at that place
     * @param leanAcross lean along the outward normal
     * @param leanAlong lean along the tangent
     */
    static Shift rim(double thicknessMm, double leanAcross, double leanAlong) {
        double half = thicknessMm / 2;
        return new Shift(
                half * Math.abs(leanAcross), half * leanAcross / Math.hypot(leanAcross, SQUARE_ON) * leanAlong);
    }

    /** What is seen of a handle's side, where it is {@code halfWidthMm} from its middle to its outline. */
    static Shift side(double thicknessMm, double halfWidthMm, double leanAcross, double leanAlong) {
        double c = thicknessMm / 2;
        double reach = Math.hypot(halfWidthMm, c * leanAcross);
        return new Shift(reach - halfWidthMm, c * c * leanAcross / reach * leanAlong);
    }

    /**
     * How far before its place in the mid-plane the handle's front is seen. Of its elliptic rim, y²/w² + z²/c² = 1, the
     * point at z is seen at y − z·lean across the knife and at −z·lean along it; of the two that are seen at a place,
     * the one farther towards the tip counts.
     *
     * @param besideMm where across the knife, seen from the handle's middle
     * @param seenHalfMm half the width at which the handle is seen there
     * @param lean of the line of sight: x along the knife, y across
     */
    double frontMm(double besideMm, double seenHalfMm, Point lean) {
        double c = FRONT_PART * handleThicknessMm / 2;
        double w2 = Math.max(1, seenHalfMm * seenHalfMm - c * c * lean.y() * lean.y());
        double towards = -Math.signum(lean.x());
        // Of the rim's points z = towards·ζ; this is the quadratic equation for ζ.
        double square = lean.y() * lean.y() / w2 + 1 / (c * c);
        double half = towards * lean.y() * besideMm / w2;
        double rest = besideMm * besideMm / w2 - 1;
        double zeta = (-half + Math.sqrt(Math.max(0, half * half - square * rest))) / square;
        return Math.abs(lean.x()) * zeta;
    }

    /** How far outside the outline the butt's end is seen, where the line of sight leans so along the knife. */
    public double buttExcessMm(double leanAlongKnife) {
        return BUTT_PART * handleThicknessMm / 2 * Math.abs(leanAlongKnife);
    }

    /**
     * What is seen less what is.
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
     * The part of its thickness at the heel that a blade has farther on: most keep it over most of their length and
     * lose it towards the tip. Common practice.
     *
     * @param towardsTip where along the blade, from 0 (heel) to 1 (tip)
     */
    public static double taper(double towardsTip) {
        return 1 - Math.pow(Math.max(0, Math.min(1, towardsTip)), 4);
    }
}
