package weltwright.sheath;

import java.util.OptionalInt;

/**
 * What the maker chooses. Every sheath that the program draws follows from a knife and one of these.
 *
 * @param kind how the body is built
 * @param hand the hand that draws
 * @param leatherThicknessMm of body, face, back and each layer of welt
 * @param weltLayers how many, or empty for as many as make the welt at least as thick as the blade
 * @param stitchMarginMm from the stitch row to the outer edge
 * @param weltInnerMarginMm of welt between the cavity and the stitch row
 * @param easeMm of air round the knife's section
 * @param pitchMm from stitch to stitch
 * @param neutralFactor K: the neutral fibre of a bend lies K times the thickness from its inside; from 0 to 1
 * @param beltWidthMm of the belt that the loop must pass
 * @param beltThicknessMm of that belt
 * @param handleDepthMm how much of the handle, from the heel on, the sheath holds; 0 seats the knife to its guard
 * @param drainHoleDiameterMm of the hole at the tip, or 0 for none
 */
public record SheathSpec(
        SheathKind kind,
        Hand hand,
        double leatherThicknessMm,
        OptionalInt weltLayers,
        double stitchMarginMm,
        double weltInnerMarginMm,
        double easeMm,
        double pitchMm,
        double neutralFactor,
        double beltWidthMm,
        double beltThicknessMm,
        double handleDepthMm,
        double drainHoleDiameterMm) {

    /** A sheath of 7/8 oz leather (7.5/64 in) with stitches 1/8 in from the edge: common practice for a belt knife. */
    public static SheathSpec standard(SheathKind kind) {
        return new SheathSpec(kind, Hand.RIGHT, 3.0, OptionalInt.empty(), 25.4 / 8, 4, 0.8, 4, 0.5, 38, 4, 0, 4);
    }

    public SheathSpec withHand(Hand other) {
        return new SheathSpec(
                kind,
                other,
                leatherThicknessMm,
                weltLayers,
                stitchMarginMm,
                weltInnerMarginMm,
                easeMm,
                pitchMm,
                neutralFactor,
                beltWidthMm,
                beltThicknessMm,
                handleDepthMm,
                drainHoleDiameterMm);
    }
}
