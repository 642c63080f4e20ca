package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;
import weltwright.geometry.curve.OutlineNode;
import weltwright.message.Messages;
import weltwright.units.Length;

/**
 * A measure taken with a caliper on the knife, which is more accurate than the photo. The outline is bent to agree with
 * it.
 *
 * <ul>
 *   <li>The length of the blade: x is displaced between heel and tip by a smoothstep 3u² − 2u³, so that the blade is
 *       stretched most half-way and not at all at either end. The tip keeps its shape, the handle its place.
 *   <li>A width: y is scaled at that place, with a weight of (1 − u²)³ over a reach to either side, twice continuously
 *       differentiable at its ends. The reach ends at the heel, the tip and the next place measured.
 * </ul>
 *
 * @param fromTipMm distance of a measured width from the tip, along the knife; empty for the length of the blade
 * @param mm the measured length
 * @param outlineMm the length on the outline before it was bent
 */
public record CaliperMeasure(OptionalDouble fromTipMm, double mm, double outlineMm) {
    private static final Messages TEXTS = Messages.of(CaliperMeasure.class);

    /** Greatest and least reach of a width measure to one side. Chosen by eye. */
    private static final double REACH_MM = 20;

    private static final double LEAST_REACH_MM = 5;
    private static final double STEP_MM = 0.1;

    /**
     * Positions of nodes that hold the curve, in reaches from the place: within the reach, at its end, and beyond it.
     */
    private static final double[] NODES_AT = {0, 0.5, 1, 1.5, -0.5, -1, -1.5};

    /** The measure holds to this. */
    private static final double AGREES_MM = 1e-7;

    private static final int MOST_ROUNDS = 60;

    /**
     * A difference of more than this share of the measure plus {@link #MOST_MM} is taken for an error in the photo or
     * in typing. Chosen by eye.
     */
    private static final double MOST_PART = 0.06;

    private static final double MOST_MM = 1;

    /**
     * Creates a measure of the blade's length. Throws {@link UserFacingException} where the outline differs too much
     * from it.
     */
    public static CaliperMeasure bladeLength(double mm, Silhouette silhouette) {
        return checked(new CaliperMeasure(OptionalDouble.empty(), mm, 0), silhouette);
    }

    /**
     * Creates a measure of the width at a distance from the tip. Throws {@link UserFacingException} where the outline
     * differs too much from it, or does not reach there.
     */
    public static CaliperMeasure width(double fromTipMm, double mm, Silhouette silhouette) {
        return checked(new CaliperMeasure(OptionalDouble.of(fromTipMm), mm, 0), silhouette);
    }

    private static CaliperMeasure checked(CaliperMeasure typed, Silhouette silhouette) {
        double now = typed.on(silhouette);
        if (!(now > 0)) {
            throw new UserFacingException(
                    TEXTS.text("caliper-measure.the-knife-has-no-width", inWords(typed.fromTipMm.orElse(0))),
                    TEXTS.text("caliper-measure.give-a-place-between-tip"));
        }
        if (Math.abs(typed.mm - now) > MOST_MM + MOST_PART * now) {
            throw new UserFacingException(
                    TEXTS.text("caliper-measure.the-outline-says-there-too", inWords(now), inWords(typed.mm)),
                    TEXTS.text("caliper-measure.measure-again-check-the-handle"));
        }
        return new CaliperMeasure(typed.fromTipMm, typed.mm, now);
    }

    private static String inWords(double mm) {
        return new Length(Math.round(mm * 10) / 10.0).inMillimetres();
    }

    /** Returns whether both are of the width at the same place, or both of the blade's length. */
    public boolean sameAs(CaliperMeasure other) {
        return fromTipMm.equals(other.fromTipMm);
    }

    /** Returns this measure on an outline, in mm; NaN where the outline does not reach to the place. */
    public double on(Silhouette silhouette) {
        if (fromTipMm.isEmpty()) {
            return silhouette.bladeLengthMm();
        }
        return widthAt(silhouette, station(silhouette));
    }

    /** Returns the width of an outline at x, in mm; NaN where it does not reach there. */
    public static double widthAt(Silhouette silhouette, double x) {
        double[] ys = silhouette.outline().sampled(STEP_MM).crossings(x);
        return ys.length < 2 ? Double.NaN : ys[ys.length - 1] - ys[0];
    }

    /** Returns x of the place of a measured width, in the silhouette's frame, in mm. */
    public double station(Silhouette silhouette) {
        return silhouette.landmarks().tip().x() - fromTipMm.orElseThrow();
    }

    /** Returns the outline as it was before it was bent to {@code one} of these measures. */
    public static Silhouette released(Silhouette silhouette, CaliperMeasure one, List<CaliperMeasure> all) {
        List<CaliperMeasure> before = new ArrayList<>(all);
        before.replaceAll(c -> c.equals(one) ? new CaliperMeasure(c.fromTipMm, c.outlineMm, c.outlineMm) : c);
        return bentTo(silhouette, before);
    }

    /** Returns the outline bent to agree with all measures; unchanged to the last bit where it already does. */
    public static Silhouette bentTo(Silhouette silhouette, List<CaliperMeasure> all) {
        Silhouette bent = silhouette;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean agrees = true;
            for (CaliperMeasure one : all) {
                double off = one.mm - one.on(bent);
                if (Math.abs(off) > AGREES_MM) {
                    agrees = false;
                    bent = one.fromTipMm.isEmpty() ? stretched(bent, off) : one.scaled(bent, all);
                }
            }
            if (agrees) {
                break;
            }
        }
        return bent;
    }

    private static Silhouette stretched(Silhouette s, double byMm) {
        double heel = s.landmarks().heel().x();
        double length = s.bladeLengthMm();
        return moved(s, p -> {
            double u = Math.max(0, Math.min(1, (p.x() - heel) / length));
            return p.plus(new Point(byMm * u * u * (3 - 2 * u), 0));
        });
    }

    private Silhouette scaled(Silhouette s, List<CaliperMeasure> all) {
        double x = station(s);
        double toTip = reach(x, s.landmarks().tip().x(), 1, s, all);
        double toButt = reach(x, s.landmarks().tip().x(), -1, s, all);
        Silhouette fine = withNodes(s, x, toTip, toButt);
        double[] ys = fine.outline().sampled(STEP_MM).crossings(x);
        double middle = (ys[0] + ys[ys.length - 1]) / 2;
        double factor = mm / (ys[ys.length - 1] - ys[0]);
        return moved(fine, p -> {
            double u = (p.x() - x) / (p.x() > x ? toTip : toButt);
            double share = Math.abs(u) < 1 ? Math.pow(1 - u * u, 3) : 0;
            return new Point(p.x(), middle + (p.y() - middle) * (1 + share * (factor - 1)));
        });
    }

    /** Returns the reach of a width measure to one side, 1 towards the tip or -1. */
    private double reach(double x, double tipX, int side, Silhouette s, List<CaliperMeasure> all) {
        double reach = REACH_MM;
        for (double end : new double[] {
            tipX, s.landmarks().heel().x(), s.landmarks().spineStart().x()
        }) {
            double away = side * (end - x);
            reach = away > 0 ? Math.min(reach, Math.max(LEAST_REACH_MM, away)) : reach;
        }
        for (CaliperMeasure other : all) {
            if (other.fromTipMm.isPresent() && !other.sameAs(this)) {
                double away = side * (other.station(s) - x);
                reach = away > 0 ? Math.min(reach, away) : reach;
            }
        }
        return reach;
    }

    /** Adds nodes on both sides at and around the place, so that a curve of few nodes does not move elsewhere. */
    private static Silhouette withNodes(Silhouette s, double x, double toTip, double toButt) {
        Outline outline = s.outline();
        for (double part : NODES_AT) {
            double reach = part > 0 ? toTip : toButt;
            double at = x + part * reach;
            double apart = reach / 5;
            double[] ys = outline.sampled(STEP_MM).crossings(at);
            if (ys.length >= 2) {
                outline = withNode(outline, new Point(at, ys[0]), apart);
                outline = withNode(outline, new Point(at, ys[ys.length - 1]), apart);
            }
        }
        return s.withOutline(outline);
    }

    private static Outline withNode(Outline outline, Point at, double apart) {
        boolean there = outline.nodes().stream().map(OutlineNode::at).anyMatch(p -> p.distance(at) < apart);
        return there ? outline : OutlineEdit.added(outline, at);
    }

    private static Silhouette moved(Silhouette s, UnaryOperator<Point> motion) {
        Silhouette moved = new Silhouette(s.outline().map(motion), s.landmarks().map(motion), s.spineOnLeft());
        return moved.withOutline(moved.outline());
    }
}
