package weltwright.app.gui.knife;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import javax.swing.AbstractButton;
import javax.swing.JButton;
import javax.swing.JToggleButton;
import javax.swing.SwingUtilities;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.MnemonicText;
import weltwright.app.gui.widget.WrappedText;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.job.OutlineAccuracy;
import weltwright.job.PhoneLensStore;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.sheath.spec.SpecFields;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.MeasureUnit;
import weltwright.wording.TraceWording;

/** The form of the knife stage: measures of the knife, ground and camera of the photo, and the results of the trace. */
public final class KnifeForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(KnifeForm.class);

    /** Length along the knife of a guard that is marked where none was found; chosen by eye. */
    private static final double DEFAULT_GUARD_MM = 6;

    private static final TraceSettings EXAMPLE =
            TraceSettings.unmeasured(new GroundChoice.Any()).assumingUsual();

    private final JobModel model;
    private final ValidatedField<OptionalDouble> handle = FieldFactory.optionalLength(
                    SpecFields.HANDLE_THICKNESS, mm -> mm)
            .withExample(OptionalDouble.of(EXAMPLE.measuredHandleMm()));
    private final ValidatedField<OptionalDouble> spine = FieldFactory.optionalLength(
                    SpecFields.SPINE_THICKNESS, mm -> mm)
            .withExample(OptionalDouble.of(EXAMPLE.measuredSpineMm()));
    private final ValidatedField<Double> drop = FieldFactory.lengthOnCommit(JobFields.TIP_DROP, 1);
    private final GroundFields groundFields;
    private final SheetAndLensFields sheetAndLens;
    private final JButton confirmSideButton = new JButton(TEXTS.text("knife-form.red-runs-along-the-edge"));
    private final JToggleButton swapSidesButton = new JToggleButton(TEXTS.text("knife-form.the-other-side-is-the"));
    private final JButton guardButton = new JButton();
    private final WrappedText guardText = new WrappedText(ThemeColors::text);
    private final CaliperFields caliperFields;
    private final WrappedText lengthsText = new WrappedText(ThemeColors::text);
    private final WrappedText sideText = new WrappedText(ThemeColors::text);
    private final WrappedText errorText = new WrappedText(ThemeColors::secondaryText);
    private final WrappedText notesText = new WrappedText(ThemeColors::secondaryText);

    /**
     * @param lensStore calibrated lenses
     * @param showCorners shows the photo with the corners of its rectangle
     */
    public KnifeForm(
            JobModel model, PhoneLensStore lensStore, Runnable showCorners, ThicknessPhotoAction thicknessPhoto) {
        this.model = model;
        addHeading(TEXTS.text("knife-form.measured-with-a-caliper"));
        addRow(
                TEXTS.text("knife-form.handle-thickest"),
                handle,
                TEXTS.text("knife-form.greatest-thickness-across-the-flats"));
        addRow(TEXTS.text("knife-form.spine-by-the-handle"), spine, TEXTS.text("knife-form.thickness-of-the-blade-s"));
        addText(TEXTS.text("knife-form.the-blade-floats-above-the"));
        KnifeCrossSectionForm crossSectionForm = new KnifeCrossSectionForm(model, thicknessPhoto);
        CollapsibleSection crossSection = addSection(TEXTS.text("knife-form.cut-across"), crossSectionForm);
        model.subscribe(() ->
                crossSection.setSummary(crossSectionForm.summary(model.job().shaping())));
        addHeading(TEXTS.text("knife-form.how-it-lay"));
        groundFields = new GroundFields(model, this, showCorners);
        FormPanel seldom = new FormPanel("2 20 8 0");
        seldom.addRow(TEXTS.text("knife-form.tip-lower-by"), drop, TEXTS.text("knife-form.how-much-nearer-to-the"));
        sheetAndLens = new SheetAndLensFields(model, seldom, groundFields, lensStore);
        CollapsibleSection seldomSection = addSection(TEXTS.text("knife-form.print-lens-tip"), seldom);
        model.subscribe(() -> seldomSection.setSummary(seldomSummary(model.job().settings())));
        addHeading(TEXTS.text("knife-form.what-the-photo-says"));
        addFullWidth(lengthsText);
        sideText.setName("side to look at");
        addFullWidth(sideText);
        addSideButton(
                confirmSideButton, "this side", TEXTS.text("knife-form.it-is-right-as-drawn"), Silhouette::spineOnLeft);
        addSideButton(
                swapSidesButton,
                "other side",
                TEXTS.text("knife-form.exchange-edge-and-spine-where"),
                s -> !s.spineOnLeft());
        guardButton.setName("guard");
        guardButton.addActionListener(e ->
                model.job().silhouette().ifPresent(s -> model.change(job -> job.withSilhouette(withGuardToggled(s)))));
        guardText.setName("guard told");
        addFullWidth(guardText);
        addFullWidth(guardButton);
        addFullWidth(errorText);
        addHeading(TEXTS.text("knife-form.measured-on-the-knife-itself"));
        caliperFields = new CaliperFields(model);
        caliperFields.addTo(this);
        addHeading(TEXTS.text("knife-form.how-the-photo-was-read"));
        addFullWidth(notesText);
        for (ValidatedField<?> field : new ValidatedField<?>[] {handle, spine, drop}) {
            field.onCommit(() -> model.change(
                    field.editSession(),
                    job -> job.withSettings(settings()).withTyped(field.name(), field.typedText())));
        }
        model.subscribe(this::update);
    }

    /** @param spineOnLeft returns the side of the spine that a press of the button states */
    private void addSideButton(AbstractButton button, String name, String tip, Predicate<Silhouette> spineOnLeft) {
        button.setName(name);
        MnemonicText text = MnemonicText.of(button.getText());
        button.setText(text.text());
        button.setMnemonic(text.mnemonic());
        button.setToolTipText(tip);
        button.addActionListener(e ->
                model.job().silhouette().ifPresent(s -> model.change(job -> job.withSpine(spineOnLeft.test(s)))));
        addFullWidth(button);
    }

    /** Sets the listener that is called after Enter was pressed in the field of a thickness. */
    public void onThicknessEntered(Runnable listener) {
        for (ValidatedField<?> field : List.of(handle, spine)) {
            // after the field's own listener, which commits the text
            field.textField().addActionListener(e -> SwingUtilities.invokeLater(listener));
        }
    }

    /** Moves the focus to the first thickness that is still to be measured; to the handle's where none is. */
    public void focusThicknesses() {
        boolean spineMissing = handle.value().isPresent() && spine.value().isEmpty();
        (spineMissing ? spine : handle).textField().requestFocusInWindow();
    }

    /** Moves the focus to the choice of the ground. */
    public void focusGround() {
        groundFields.focus();
    }

    /** Chooses a rectangle with corners set by hand as the ground, and shows its corners. */
    public void setCorners() {
        groundFields.chooseRectangle();
    }

    /** Fills in the station of a width and moves the focus to the field for the width. */
    public void editWidthAt(double fromTipMm) {
        caliperFields.editWidthAt(fromTipMm);
    }

    /** Shows the row for the distance of the ground's lines: the photo shows a ruled ground. */
    public void requirePitch() {
        groundFields.requirePitch();
        update();
    }

    private TraceSettings settings() {
        return model.job()
                .settings()
                .withHandleThicknessMm(handle.value())
                .withSpineThicknessMm(spine.value())
                .withTipDropMm(drop.value());
    }

    private void update() {
        Job job = model.job();
        TraceSettings settings = job.settings();
        handle.setValue(settings.handleThicknessMm(), job.typedText(handle.name()));
        spine.setValue(settings.spineThicknessMm(), job.typedText(spine.name()));
        groundFields.update(job);
        sheetAndLens.update(job);
        drop.setValue(settings.tipDropMm(), job.typedText(drop.name()));
        swapSidesButton.setEnabled(job.silhouette().isPresent());
        swapSidesButton.setSelected(job.silhouette().isPresent()
                && job.trace().isPresent()
                && job.silhouette().get().spineOnLeft()
                        != job.trace().get().silhouette().spineOnLeft());
        updateGuard(job.silhouette());
        lengthsText.showText(job.silhouette()
                .map(s -> describe(s, job, model.unit()))
                .orElse(
                        settings.isMeasured()
                                ? TEXTS.text("knife-form.no-outline-yet")
                                : TEXTS.text("knife-form.no-outline-yet-it-waits")));
        sideText.showText(job.asksForEdge() ? TEXTS.text("knife-form.the-outline-does-not-tell") : "");
        confirmSideButton.setVisible(job.asksForEdge());
        errorText.showText(job.trace()
                .map(Trace::error)
                .map(error -> changedAccuracy(job) + TraceWording.sentences(error, model.unit()))
                .orElse(""));
        notesText.showText(job.trace()
                .map(t -> t.notes().stream()
                        .map(note -> TraceWording.sentence(note, model.unit()))
                        .collect(Collectors.joining(" ")))
                .orElse(""));
    }

    private void updateGuard(Optional<Silhouette> silhouette) {
        Optional<Guard> guard = silhouette.flatMap(s -> s.landmarks().guard());
        guardText.showText(guard.map(g -> TEXTS.text(
                        "knife-form.a-guard-of-along-the", model.unit().format(Math.round(g.lengthMm() * 10) / 10.0)))
                .orElse(""));
        guardButton.setText(
                guard.isPresent() ? TEXTS.text("knife-form.there-is-no-guard") : TEXTS.text("knife-form.mark-a-guard"));
        guardButton.setToolTipText(
                guard.isPresent()
                        ? TEXTS.text("knife-form.takes-its-marks-away-the")
                        : TEXTS.text("knife-form.where-a-guard-a-bolster"));
        guardButton.setEnabled(silhouette.isPresent());
    }

    /**
     * Returns the silhouette without its guard; or with the guard found in its outline, else with one behind its heel.
     */
    private static Silhouette withGuardToggled(Silhouette s) {
        if (s.landmarks().guard().isPresent()) {
            return s.withGuard(Optional.empty());
        }
        Silhouette found = s.withGuardFound();
        return found.landmarks().guard().isPresent()
                ? found
                : s.withGuardFromTip(s.bladeLengthMm(), s.bladeLengthMm() + DEFAULT_GUARD_MM);
    }

    /** Returns what hand work and measures make of the trace's error; empty where they leave it as it is. */
    private String changedAccuracy(Job job) {
        return OutlineAccuracy.of(job)
                .filter(accuracy -> accuracy.byHand() > 0 || accuracy.contradictionMm() > 0)
                .map(accuracy -> TEXTS.text(
                        "knife-form.with-what-was-drawn-by", model.unit().format(accuracy.error95Mm(), 2)))
                .orElse("");
    }

    private static String describe(Silhouette s, Job job, MeasureUnit unit) {
        String tolerance = job.trace()
                .map(trace -> TEXTS.text(
                        "knife-form.as-found-give-or-take",
                        unit.format(tenths(trace.landmarkError().bladeLength95Mm()))))
                .orElse("");
        return TEXTS.text(
                "knife-form.blade-overall",
                unit.format(tenths(s.bladeLengthMm())),
                tolerance,
                unit.format(tenths(s.overallLengthMm())));
    }

    /** Says how long the bars of the print are taken to be, and what of the lens and the tip was told. */
    private String seldomSummary(TraceSettings settings) {
        MeasureUnit unit = model.unit();
        List<String> told = new ArrayList<>();
        told.add(TEXTS.text(
                "knife-form.bars",
                unit.format(settings.sheetScale().x() * ReferenceSheet.BAR_MM),
                unit.format(settings.sheetScale().y() * ReferenceSheet.BAR_MM)));
        settings.phone().ifPresent(lens -> told.add(lens.name()));
        settings.focal35mm().ifPresent(mm -> told.add(TEXTS.text("knife-form.lens", mm)));
        if (settings.tipDropMm() != 0) {
            told.add(TEXTS.text("knife-form.tip", unit.format(settings.tipDropMm())));
        }
        return String.join("; ", told);
    }

    private static double tenths(double mm) {
        return Math.round(mm * 10) / 10.0;
    }
}
