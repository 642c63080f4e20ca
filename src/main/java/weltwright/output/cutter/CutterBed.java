package weltwright.output.cutter;

import weltwright.units.LengthField;

/**
 * The bed of a cutting machine, and how leather lies on it.
 *
 * @param widthMm from left to right
 * @param heightMm from front to back
 * @param sideUp the side of the leather that the machine sees, and so marks
 */
public record CutterBed(double widthMm, double heightMm, LeatherSide sideUp) {
    public static final LengthField WIDTH = LengthField.of("width of the cutter's bed", 100, 3000);
    public static final LengthField HEIGHT = LengthField.of("height of the cutter's bed", 100, 3000);

    /** A size that many machines for a workshop have, with the leather's good side up, where its flaws are seen. */
    public static final CutterBed USUAL = new CutterBed(600, 400, LeatherSide.GRAIN);

    /** Throws {@link weltwright.error.UserFacingException} where the bed is smaller or larger than any machine's. */
    public CutterBed {
        widthMm = WIDTH.checkedMm(widthMm);
        heightMm = HEIGHT.checkedMm(heightMm);
    }
}
