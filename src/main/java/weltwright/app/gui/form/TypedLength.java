package weltwright.app.gui.form;

import weltwright.app.gui.model.JobModel;
import weltwright.error.UserFacingException;
import weltwright.units.LengthField;

/** Lengths of a job outside of {@link ValidatedField}s, as they were typed. */
public final class TypedLength {
    private TypedLength() {}

    /**
     * Returns the text that the user typed for a length; where there is none, or it no longer stands for the length, as
     * in another unit, the length formatted exactly.
     *
     * @param key of the text in the job
     * @param field that it was typed in
     */
    public static String of(JobModel model, String key, LengthField field, double mm) {
        return model.job()
                .typedText(key)
                .filter(text -> standsFor(model, text, field, mm))
                .orElseGet(() -> model.unit().formatExactly(mm));
    }

    private static boolean standsFor(JobModel model, String text, LengthField field, double mm) {
        try {
            return field.readMm(text, model.unit().ofBareNumbers()) == mm;
        } catch (UserFacingException e) {
            return false;
        }
    }
}
