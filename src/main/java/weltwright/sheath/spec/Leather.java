package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The leather of body, face and back.
 *
 * @param thicknessMm of one layer
 * @param neutralFactor K: the neutral fibre of a bend lies K times the thickness from its inside; from 0 to 1
 * @param formingShrink share by which leather that was formed wet shrinks over the knife as it dries; 0 for no
 *     allowance. Every sheath is formed wet.
 * @param bulge which panel goes round the knife
 * @param giveMm amount by which leather formed to the knife gives where a wider part passes, as half of the difference
 *     in girth
 */
@RecordBuilder
public record Leather(double thicknessMm, double neutralFactor, double formingShrink, Bulge bulge, double giveMm)
        implements LeatherBuilder.With {
    /** Between 1.5 and 2.5 mm: common practice. */
    public static final double USUAL_GIVE_MM = 2;

    /** Of 7/8 oz (7.5/64 in), firm and vegetable tanned, which hardly shrinks: common practice for a belt knife. */
    public static final Leather USUAL = new Leather(3, 0.5, 0, Bulge.SHARED);

    /** Leather with the usual give. */
    public Leather(double thicknessMm, double neutralFactor, double formingShrink, Bulge bulge) {
        this(thicknessMm, neutralFactor, formingShrink, bulge, USUAL_GIVE_MM);
    }

    /** Which of two panels goes round the knife where it is thicker than the welt. A folded body shares it always. */
    public enum Bulge {
        /** Face and back alike. */
        SHARED,
        /** The face alone; the back lies flat on the hip. */
        FACE
    }

    /** Returns the distance from the inside of a bend to its neutral fibre. */
    public double neutralMm() {
        return neutralFactor * thicknessMm;
    }
}
