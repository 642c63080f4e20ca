package weltwright.trace.outline;

import weltwright.geometry.Point;
import weltwright.knife.HandleSection;
import weltwright.knife.ThicknessProfile;

/**
 * The displacement of a thick knife's silhouette from its outline in the mid-plane, in an oblique view.
 *
 * <p>A point at height z above the mid-plane appears at its place minus z times the lean of the line of sight, the
 * horizontal displacement for each mm of height. Let a be the lean along the outline's outward normal. Then
 *
 * <ul>
 *   <li>a square spine of thickness T shows its near or far corner, z = ∓T/2: it appears T/2·|a| farther out; T
 *       decreases towards the tip. A blade's edge does the same with its own thickness;
 *   <li>a handle whose section is a superellipse of exponent n with half axes w across and c in thickness appears where
 *       the line of sight touches it: s − w farther out, where s = (w^q + |ca|^q)^(1/q) with 1/n + 1/q = 1 is the
 *       section's support function (the norm dual to that of the section: Hölder's inequality);
 *   <li>a handle's front that stands proud of the blade shows the edge of its section: {@link #frontMm};
 *   <li>a butt shows the edge of its face, by half its thickness times |a| farther out.
 * </ul>
 *
 * @param spineThicknessMm at the heel
 * @param edgeThicknessMm behind the cutting edge at the heel
 * @param handleThicknessMm the greatest
 * @param profile thicknesses measured elsewhere along the knife
 * @param handleSection shape of the handle's section, with its exponent n
 * @param doubleEdged whether both sides of the blade are as thin as the edge
 */
public record ThicknessParallax(
        double spineThicknessMm,
        double edgeThicknessMm,
        double handleThicknessMm,
        ThicknessProfile profile,
        HandleSection handleSection,
        boolean doubleEdged) {
    /** Thickness of a butt's face, which is rounded over, as a part of the handle's. Common practice. */
    private static final double BUTT_PART = 0.67;

    /** Thickness of a handle's front as a part of its greatest: mean of what is usual. Common practice. */
    public static final double FRONT_PART = 0.9;

    /** Standard deviation of a uniform distribution, in half its width. */
    static final double UNIFORM_SIGMA = 1 / Math.sqrt(3);

    /** Least part of a width that is left after the thickness is taken off, for a very oblique view; chosen by eye. */
    private static final double LEAST_TRUE_PART = 0.3;

    /** Bisections after which a height of some 10 mm is known to a micrometre. */
    private static final int BISECTIONS = 24;

    /**
     * Returns the displacement of a spine or a cutting edge with a square section.
     *
     * @param thicknessMm at that place
     * @param sigmaMm standard deviation of that
     * @param leanAcross lean along the outward normal
     */
    static Shift bladeSide(double thicknessMm, double sigmaMm, double leanAcross) {
        return new Shift(thicknessMm / 2 * Math.abs(leanAcross), sigmaMm / 2 * Math.abs(leanAcross));
    }

    /**
     * Returns the displacement of a handle's side.
     *
     * @param thicknessMm at that place
     * @param seenHalfMm half the width there, as it appears
     * @param leanAcross lean along the outward normal
     */
    Shift handleSide(double thicknessMm, double seenHalfMm, double leanAcross) {
        double rise = thicknessMm / 2 * Math.abs(leanAcross);
        double n = handleSection.exponent();
        double most = trueHalfMm(seenHalfMm, rise, Math.max(2, n - handleSection.spread()));
        double least = trueHalfMm(seenHalfMm, rise, n + handleSection.spread());
        return new Shift(seenHalfMm - trueHalfMm(seenHalfMm, rise, n), (most - least) / 2 * UNIFORM_SIGMA);
    }

    /**
     * Returns half the width of a section that appears so wide, where its half thickness times the lean is the rise.
     */
    private static double trueHalfMm(double seenHalfMm, double riseMm, double exponent) {
        double q = dual(exponent);
        double least = LEAST_TRUE_PART * seenHalfMm;
        return Math.max(least, Math.pow(Math.max(0, Math.pow(seenHalfMm, q) - Math.pow(riseMm, q)), 1 / q));
    }

    /** Returns the exponent of the dual norm. */
    private static double dual(double exponent) {
        return exponent / (exponent - 1);
    }

    /** Returns half the true width of a front that is so thick, as a part of the handle's thickness. */
    double frontHalfMm(double seenHalfMm, Point lean, double part) {
        return trueHalfMm(seenHalfMm, part * handleThicknessMm / 2 * Math.abs(lean.y()), handleSection.exponent());
    }

    /**
     * Returns the displacement, towards the tip, of the corner at which the outline of a handle's side ends. The line
     * of sight touches the section at the height of {@link #touchMm}, which appears displaced along the knife.
     *
     * @param side 1 on the side of positive y, −1 on the other
     */
    Shift frontCorner(double seenHalfMm, Point lean, double part, int side) {
        double n = handleSection.exponent();
        double c = part * handleThicknessMm / 2;
        double round = touchMm(c, seenHalfMm, lean.y(), Math.max(2, n - handleSection.spread()));
        double square = touchMm(c, seenHalfMm, lean.y(), n + handleSection.spread());
        return new Shift(
                side * lean.x() * touchMm(c, seenHalfMm, lean.y(), n),
                Math.abs(lean.x() * (square - round)) / 2 * UNIFORM_SIGMA);
    }

    /**
     * Returns how far below the mid-plane the line of sight touches a section on the side of positive y: the derivative
     * of its support function.
     */
    private static double touchMm(double halfThicknessMm, double seenHalfMm, double leanAcross, double exponent) {
        double rise = Math.min(1, halfThicknessMm * Math.abs(leanAcross) / seenHalfMm);
        return Math.signum(leanAcross) * halfThicknessMm * Math.pow(rise, dual(exponent) - 1);
    }

    /**
     * Returns the displacement of a handle's front along the knife, towards the tip. The point at height z of its
     * section, |y/w|ⁿ + |z/c|ⁿ = 1, appears at y − z·lean across the knife and at −z·lean along it; of the two points
     * that appear at a place, the one farther towards the tip is visible. It is found by bisection, from the point on
     * the chord between the places at which the line of sight touches the section.
     *
     * @param besideMm distance across the knife from the handle's middle, as it appears
     * @param seenHalfMm half the width of the handle there, as it appears
     * @param lean of the line of sight: x along the knife, y across
     * @param part of the handle's thickness that is the front's
     */
    double frontMm(double besideMm, double seenHalfMm, Point lean, double part) {
        double c = part * handleThicknessMm / 2;
        double n = handleSection.exponent();
        double w = frontHalfMm(seenHalfMm, lean, part);
        double slope = -Math.signum(lean.x()) * lean.y();
        double inside = -Math.max(-1, Math.min(1, besideMm / seenHalfMm)) * touchMm(c, seenHalfMm, slope, n);
        double outside = c;
        for (int i = 0; i < BISECTIONS; i++) {
            double z = (inside + outside) / 2;
            double value = Math.pow(Math.abs(besideMm + slope * z) / w, n) + Math.pow(Math.abs(z) / c, n);
            inside = value <= 1 ? z : inside;
            outside = value <= 1 ? outside : z;
        }
        return Math.abs(lean.x()) * inside;
    }

    /** Returns the outward displacement of the butt's end for a lean along the knife. */
    public double buttExcessMm(double leanAlongKnife) {
        return BUTT_PART * handleThicknessMm / 2 * Math.abs(leanAlongKnife);
    }

    /**
     * The displacement of the silhouette at a point.
     *
     * @param outMm along the outward normal
     * @param outSigmaMm standard deviation of {@code outMm} by what is not known of the sections
     */
    public record Shift(double outMm, double outSigmaMm) {
        Shift times(double factor) {
            return new Shift(factor * outMm, factor * outSigmaMm);
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
