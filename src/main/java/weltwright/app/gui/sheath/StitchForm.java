package weltwright.app.gui.sheath;

import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.job.MakerDefaults;
import weltwright.message.Messages;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Stitching;

/** The form for stitch length, margin and back-stitches. */
final class StitchForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(StitchForm.class);

    private final ValidatedField<Double> pitch = FieldFactory.stitchPitch(4);
    private final ValidatedField<Double> margin = FieldFactory.length(SpecFields.STITCH_MARGIN, 1);
    private final ValidatedField<OptionalDouble> thread = FieldFactory.optionalLength(SpecFields.THREAD, mm -> mm);
    private final JComboBox<ComboBoxItem<Integer>> back = ComboBoxItem.create("back-stitches");

    StitchForm(FormBinding<SheathSpec> sheath, Supplier<MakerDefaults> maker) {
        super("2 20 8 0");
        pitch.withChoices(() -> maker.get().pitchTexts());
        thread.withChoices(() -> maker.get().threadTexts());
        FormBinding<Stitching> stitching = sheath.nested(SheathSpec::stitching, SheathSpec::withStitching);
        addRow(TEXTS.text("stitch-form.stitch-length"), pitch, TEXTS.text("stitch-form.from-hole-to-hole-as"));
        stitching.bind(pitch, Stitching::pitchMm, Stitching::withPitchMm);
        addRow(TEXTS.text("stitch-form.from-the-edge"), margin, TEXTS.text("stitch-form.from-the-row-of-stitches"));
        stitching.bind(margin, Stitching::marginMm, Stitching::withMarginMm);
        IntStream.rangeClosed((int) SpecFields.BACK_STITCHES.least(), (int) SpecFields.BACK_STITCHES.greatest())
                .forEach(n -> back.addItem(
                        new ComboBoxItem<>(n, n == 0 ? TEXTS.text("stitch-form.none") : Integer.toString(n))));
        addRow(TEXTS.text("stitch-form.back-stitches"), back, TEXTS.text("stitch-form.sewn-back-over-at-either"));
        stitching.bind(back, Stitching::backStitches, Stitching::withBackStitches);
        addRow(TEXTS.text("stitch-form.thread"), thread, TEXTS.text("stitch-form.thread.tip"));
        stitching.bind(thread, Stitching::threadMm, Stitching::withThreadMm);
    }

    String summary(Stitching stitching) {
        return TEXTS.text(
                "stitch-form.long-from-the-edge",
                unit().format(stitching.pitchMm()),
                unit().format(stitching.marginMm()));
    }
}
