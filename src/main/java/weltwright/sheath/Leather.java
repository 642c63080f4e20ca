package weltwright.sheath;

/**
 * The leather of body, face and back.
 *
 * @param thicknessMm of one layer
 * @param neutralFactor K: the neutral fibre of a bend lies K times the thickness from its inside; from 0 to 1
 * @param formingShrink by what share wet-formed leather draws together over the knife; from 0, for leather that is not
 *     wet-formed
 * @param bulge which panel goes round the knife
 */
public record Leather(double thicknessMm, double neutralFactor, double formingShrink, Bulge bulge) {
    /** Of 7/8 oz (7.5/64 in), firm and vegetable tanned, not wet-formed: common practice for a belt knife. */
    public static final Leather USUAL = new Leather(3, 0.5, 0, Bulge.SHARED);

    /** Which of two panels goes round the knife where it is thicker than the welt. A folded body shares it always. */
    public enum Bulge {
        /** Face and back alike. */
        SHARED,
        /** The face alone; the back lies flat on the hip. */
        FACE
    }

    /** From the inside of a bend to its neutral fibre. */
    double neutralMm() {
        return neutralFactor * thicknessMm;
    }
}
