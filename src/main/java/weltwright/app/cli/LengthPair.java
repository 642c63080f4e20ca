package weltwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import weltwright.error.UserFacingException;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.job.JobFields;
import weltwright.units.LengthField;
import weltwright.units.PrintScale;

/**
 * Two lengths that are typed together, with a comma between them: on a printed page across and down, or the two ends of
 * a guard.
 *
 * @param across the first length
 * @param down the second
 * @param nominalMm what both would be on a true page; 1 where they are no part of a page
 */
record LengthPair(LengthField across, LengthField down, double nominalMm) {
    static final LengthPair SHEET_BARS =
            new LengthPair(JobFields.SHEET_BAR_ACROSS, JobFields.SHEET_BAR_DOWN, ReferenceSheet.BAR_MM);

    static final LengthPair PRINTED_SQUARE =
            new LengthPair(JobFields.PRINTED_SQUARE_ACROSS, JobFields.PRINTED_SQUARE_DOWN, 50);

    static final LengthPair GUARD = new LengthPair(JobFields.GUARD_FRONT, JobFields.GUARD_BACK, 1);

    /** Reads them as the scale that a printer has. */
    PrintScale readScale(String typed) {
        double[] mm = readMm(typed);
        return new PrintScale(mm[0] / nominalMm, mm[1] / nominalMm);
    }

    /** Reads "99.7mm,99.9mm"; a decimal comma in either is told from the comma between them. */
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
                "The " + across.name() + " and the " + down.name() + " cannot be read from \"" + typed + "\".",
                "Give both with a comma between them, such as 99.7mm,99.9mm.");
    }
}
