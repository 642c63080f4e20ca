package weltwright.app.gui.knife;

import java.util.OptionalDouble;
import java.util.function.BiFunction;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.PrintScale;

/** The rows of a form for what a photo is measured by besides its ground: the printed sheet's bars, and the lens. */
public final class SheetAndLensFields {
    private static final Messages TEXTS = Messages.of(SheetAndLensFields.class);

    private final ValidatedField<Double> barAcross = FieldFactory.printedLength(JobFields.SHEET_BAR_ACROSS, 1);
    private final ValidatedField<Double> barDown = FieldFactory.printedLength(JobFields.SHEET_BAR_DOWN, 1);
    private final ValidatedField<OptionalDouble> focal =
            FieldFactory.optionalNumber(JobFields.FOCAL_35MM, OptionalDouble.empty());
    private final JobModel model;
    private final FormPanel form;
    private final GroundFields ground;
    private final PhoneField phone;

    /**
     * @param form gets these rows
     * @param ground tells whether there may be a printed sheet
     * @param lensStore calibrated lenses
     */
    public SheetAndLensFields(JobModel model, FormPanel form, GroundFields ground, PhoneLensStore lensStore) {
        this.model = model;
        this.form = form;
        this.ground = ground;
        form.addRow(
                TEXTS.text("sheet-and-lens-fields.bar-across"),
                barAcross,
                TEXTS.text("sheet-and-lens-fields.bar-across.tip"));
        form.addRow(
                TEXTS.text("sheet-and-lens-fields.bar-down"),
                barDown,
                TEXTS.text("sheet-and-lens-fields.bar-down.tip"));
        phone = new PhoneField(model, lensStore);
        phone.addTo(form);
        form.addRow(TEXTS.text("sheet-and-lens-fields.focal"), focal, TEXTS.text("sheet-and-lens-fields.focal.tip"));
        bind(
                barAcross,
                (settings, mm) -> settings.withSheetScale(new PrintScale(
                        mm / ReferenceSheet.BAR_MM, settings.sheetScale().y())));
        bind(
                barDown,
                (settings, mm) -> settings.withSheetScale(
                        new PrintScale(settings.sheetScale().x(), mm / ReferenceSheet.BAR_MM)));
        bind(focal, TraceSettings::withFocal35mm);
    }

    private <T> void bind(ValidatedField<T> field, BiFunction<TraceSettings, T, TraceSettings> setter) {
        field.onCommit(() -> model.change(
                field.editSession(),
                job -> job.withSettings(setter.apply(job.settings(), field.value()))
                        .withTyped(field.name(), field.typedText())));
    }

    /** Shows what the job has; to be called after each of its changes, after the ground's fields. */
    public void update(Job job) {
        TraceSettings settings = job.settings();
        phone.update(job);
        form.setRowVisible(barAcross, ground.mayBeSheet());
        form.setRowVisible(barDown, ground.mayBeSheet());
        barAcross.setValue(settings.sheetScale().x() * ReferenceSheet.BAR_MM, job.typedText(barAcross.name()));
        barDown.setValue(settings.sheetScale().y() * ReferenceSheet.BAR_MM, job.typedText(barDown.name()));
        focal.setValue(settings.focal35mm());
    }
}
