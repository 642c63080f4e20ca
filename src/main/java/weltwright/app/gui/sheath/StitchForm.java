package weltwright.app.gui.sheath;

import java.util.function.Supplier;
import java.util.stream.IntStream;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.job.MakerDefaults;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Stitching;

/** The form for stitch length, margin and back-stitches. */
final class StitchForm extends FormPanel {
    private final ValidatedField<Double> pitch = FieldFactory.stitchPitch(4);
    private final ValidatedField<Double> margin = FieldFactory.length(SpecFields.STITCH_MARGIN, 1);
    private final JComboBox<ComboBoxItem<Integer>> back = ComboBoxItem.create("back-stitches");

    StitchForm(FormBinding<SheathSpec> sheath, Supplier<MakerDefaults> maker) {
        super("2 20 8 0");
        pitch.withChoices(() -> maker.get().pitchTexts());
        FormBinding<Stitching> stitching = sheath.nested(SheathSpec::stitching, SheathSpec::withStitching);
        addRow("Stitch length", (char) 0, pitch, "From hole to hole, as your iron has it: 4 mm, 5/32 in or 6 spi");
        stitching.bind(pitch, Stitching::pitchMm, Stitching::withPitchMm);
        addRow("From the edge", (char) 0, margin, "From the row of stitches to the outer edge");
        stitching.bind(margin, Stitching::marginMm, Stitching::withMarginMm);
        IntStream.rangeClosed((int) SpecFields.BACK_STITCHES.least(), (int) SpecFields.BACK_STITCHES.greatest())
                .forEach(n -> back.addItem(new ComboBoxItem<>(n, n == 0 ? "None" : Integer.toString(n))));
        addRow("Back-stitches", (char) 0, back, "Sewn back over at either end of a seam, that it cannot come undone");
        stitching.bind(back, Stitching::backStitches, Stitching::withBackStitches);
    }

    String summary(Stitching stitching) {
        return unit().format(stitching.pitchMm()) + " long, " + unit().format(stitching.marginMm()) + " from the edge";
    }
}
