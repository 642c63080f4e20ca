package weltwright.command;

import java.util.ArrayList;
import java.util.List;
import weltwright.ground.ReferenceSheet;
import weltwright.job.Fields;
import weltwright.measure.LengthField;
import weltwright.measure.PrintScale;
import weltwright.trouble.Trouble;

/**
 * Two lengths measured on one printed page, typed together: the scale that the printer has.
 *
 * @param across the length across the page
 * @param down the length down the page
 * @param nominalMm what both would be on a true page
 */
record Measured(LengthField across, LengthField down, double nominalMm) {
    static final Measured SHEET_BARS =
            new Measured(Fields.SHEET_BAR_ACROSS, Fields.SHEET_BAR_DOWN, ReferenceSheet.BAR_MM);

    static final Measured PRINTED_SQUARE =
            new Measured(Fields.PRINTED_SQUARE_ACROSS, Fields.PRINTED_SQUARE_DOWN, 50);

    /** Reads "99.7mm,99.9mm"; a decimal comma in either is told from the comma between them. */
    PrintScale read(String typed) {
        List<Trouble> troubles = new ArrayList<>();
        for (int comma = typed.indexOf(','); comma >= 0; comma = typed.indexOf(',', comma + 1)) {
            try {
                double acrossMm = across.readMm(typed.substring(0, comma));
                double downMm = down.readMm(typed.substring(comma + 1));
                return new PrintScale(acrossMm / nominalMm, downMm / nominalMm);
            } catch (Trouble trouble) {
                troubles.add(trouble);
            }
        }
        if (troubles.size() == 1) {
            throw troubles.get(0);
        }
        throw new Trouble("The " + across.name() + " and the " + down.name() + " cannot be read from \"" + typed + "\".",
                "Give both with a comma between them, such as 99.7mm,99.9mm.");
    }
}
