package weltwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import weltwright.error.UserFacingException;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.job.JobFields;
import weltwright.message.Messages;
import weltwright.units.LengthField;
import weltwright.units.PrintScale;

/**
 * An option value of two lengths with a comma between them: measures across and down a printed page, or the ends of a
 * guard.
 *
 * @param across first length
 * @param down second length
 * @param nominalMm both lengths on a page that is printed true to size; 1 where they are not on a page
 */
record LengthPair(LengthField across, LengthField down, double nominalMm) {
    private static final Messages TEXTS = Messages.of(LengthPair.class);

    static final LengthPair SHEET_BARS =
            new LengthPair(JobFields.SHEET_BAR_ACROSS, JobFields.SHEET_BAR_DOWN, ReferenceSheet.BAR_MM);

    static final LengthPair PRINTED_SQUARE =
            new LengthPair(JobFields.PRINTED_SQUARE_ACROSS, JobFields.PRINTED_SQUARE_DOWN, 50);

    static final LengthPair GUARD = new LengthPair(JobFields.GUARD_FRONT, JobFields.GUARD_BACK, 1);

    /** Reads the lengths as the scale of a printer. */
    PrintScale readScale(String typed) {
        double[] mm = readMm(typed);
        return new PrintScale(mm[0] / nominalMm, mm[1] / nominalMm);
    }

    /**
     * Reads a text such as "99.7mm,99.9mm" and returns both lengths in mm. Each comma is tried as the separator, so
     * that a length may have a decimal comma.
     *
     * @throws UserFacingException where the text is no pair of valid lengths
     */
    double[] readMm(String typed) {
        List<UserFacingException> errors = new ArrayList<>();
        for (int comma = typed.indexOf(','); comma >= 0; comma = typed.indexOf(',', comma + 1)) {
            try {
                double acrossMm = across.readMm(typed.substring(0, comma));
                double downMm = down.readMm(typed.substring(comma + 1));
                return new double[] {acrossMm, downMm};
            } catch (UserFacingException e) {
                errors.add(e);
            }
        }
        if (errors.size() == 1) {
            throw errors.get(0);
        }
        throw new UserFacingException(
                TEXTS.text("length-pair.the-and-the-cannot-be", across.name(), down.name(), typed),
                TEXTS.text("length-pair.give-both-with-a-comma"));
    }
}
