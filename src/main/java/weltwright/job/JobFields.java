package weltwright.job;

import java.util.Locale;
import weltwright.sheath.spec.SpecFields;
import weltwright.units.LengthField;
import weltwright.units.LengthUnit;
import weltwright.units.NumberField;
import weltwright.units.TextField;

/**
 * The input fields of a job beside those of {@link SpecFields}, with their names and bounds. The bounds are chosen by
 * eye, wide enough for unusual knives and narrow enough to detect typing errors and wrong units.
 */
public final class JobFields {
    public static final TextField CUSTOMER = TextField.singleLine("customer", 120);
    public static final TextField KNIFE_NAME = TextField.singleLine("knife", 120);
    /** About eight printed pages. */
    public static final TextField NOTES = TextField.multiline("notes", 20_000);

    /** A length as it was typed. */
    static final TextField TYPED = TextField.singleLine("typed length", 80);

    public static final LengthField EDGE_THICKNESS = LengthField.of("edge thickness", 0, 15);
    public static final LengthField GRIND_HEIGHT = LengthField.of("height of the grind", 0, 150);
    public static final LengthField TIP_DROP = LengthField.of("tip drop", 0, 40);

    public static final LengthField BLADE_LENGTH = LengthField.of("length of the blade", 10, 1500);
    public static final LengthField WIDTH = LengthField.of("width of the knife", 1, 300);
    public static final LengthField WIDTH_PLACE = LengthField.of("place of the width, from the tip", 1, 1500);

    public static final LengthField THICKNESS = LengthField.of("thickness of the knife", 0.2, 60);
    public static final LengthField THICKNESS_PLACE = LengthField.of("place of the thickness, from the tip", 0.5, 1500);

    public static final LengthField GUARD_FRONT = LengthField.of("place of the guard's front, from the tip", 1, 1500);
    public static final LengthField GUARD_BACK = LengthField.of("place of the guard's back, from the tip", 1, 1500);

    public static final LengthField LINE_PITCH = LengthField.of("distance of the ground's lines", 2, 60);

    /** The sheet's bars are 100 mm long at true scale; a printer is not off by a tenth. */
    public static final LengthField SHEET_BAR_ACROSS = LengthField.of("bar across the sheet", 90, 110);

    public static final LengthField SHEET_BAR_DOWN = LengthField.of("bar down the sheet", 90, 110);

    public static final LengthField PRINTED_SQUARE_ACROSS = LengthField.of("width of the printed square", 45, 55);
    public static final LengthField PRINTED_SQUARE_DOWN = LengthField.of("height of the printed square", 45, 55);

    /** What the 50 mm square measures on a screen, whose pixels may be of any size. */
    public static final LengthField SCREEN_SQUARE = LengthField.of("square on the screen", 20, 150);

    /** Position of a displayed cross-section. */
    public static final LengthField STATION = LengthField.of("place, from the throat", 0, 1500);

    public static final LengthField POST = LengthField.of("diameter of the post", 0.5, 15);
    public static final LengthField CAP = LengthField.of("diameter of the cap", 1, 40);
    public static final LengthField GRIP_FROM = LengthField.of("thinnest leather that it holds", 0, 40);
    public static final LengthField GRIP_TO = LengthField.of("thickest leather that it holds", 0.5, 60);
    public static final LengthField RING_INSIDE = LengthField.of("clear width of the ring", 5, 100);
    public static final LengthField RING_WIRE = LengthField.of("wire of the ring", 1, 12);
    /** A pixel of a photo from the left or from the top; the greatest is that of the largest photo that is read. */
    public static final NumberField PHOTO_PLACE = NumberField.of("place in the photo", 0, 65_535);

    public static final NumberField FOCAL_35MM = NumberField.of("focal length in 35 mm terms", 5, 2000);

    /** The range of {@code SHEET_BAR_ACROSS} and {@code SHEET_BAR_DOWN}. */
    public static final NumberField SHEET_SCALE = NumberField.of("scale of the printed sheet", 0.9, 1.1);

    public static final TextField STOCK_NAME = TextField.singleLine("name of the leather", 60);
    public static final TextField STOCK_KIND = TextField.singleLine("kind of leather", 60);
    public static final LengthField STOCK_LENGTH = LengthField.of("length of the leather", 20, 5000);
    public static final LengthField STOCK_WIDTH = LengthField.of("width of the leather", 20, 5000);
    public static final LengthField STOCK_THICKNESS = LengthField.ofLeather("thickness of the leather", 0.5, 10);
    public static final NumberField PRICE = NumberField.of("price", 0, 1_000_000);
    public static final LengthField GAP = LengthField.of("gap between pieces", 0, 50);
    public static final LengthField EDGE_GAP = LengthField.of("gap to the edge", 0, 100);

    /** More sheaths than any stock holds would only take memory. */
    public static final NumberField SHEATHS = NumberField.count("number of sheaths", 1, 200);

    /** Far beyond any stock and pattern. */
    static final NumberField PLACEMENT = NumberField.of("place of a piece on leather", -20_000, 20_000);

    static final NumberField PLACEMENT_TURN = NumberField.of("turn of a piece on leather", -1000, 1000);

    public static final NumberField STITCHES_PER_INCH = NumberField.of("stitches per inch", 2.2, 16);

    private JobFields() {}

    /** Parses the pitch of stitches, as {@link #readPitchMm(String, LengthUnit)} with mm as the default unit. */
    public static double readPitchMm(String typed) {
        return readPitchMm(typed, LengthUnit.MILLIMETRE);
    }

    /**
     * Parses the pitch of stitches, given as a length or as stitches per inch: "4 mm", "6 spi", "6 to the inch".
     *
     * @param defaultUnit unit of a number without one
     * @return the pitch in mm
     */
    public static double readPitchMm(String typed, LengthUnit defaultUnit) {
        String text = typed.strip().toLowerCase(Locale.ROOT);
        String count = text.replaceFirst("(spi|to the inch|je zoll)$", "");
        return count.equals(text)
                ? SpecFields.PITCH.readMm(typed, defaultUnit)
                : LengthUnit.INCH.inMm() / STITCHES_PER_INCH.read(count);
    }
}
