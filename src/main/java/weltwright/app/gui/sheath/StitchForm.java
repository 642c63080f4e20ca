package weltwright.app.gui.sheath;

import java.util.stream.IntStream;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.job.JobFields;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.units.Length;

/** How the sheath is sewn. */
final class StitchForm extends FormPanel {
    private final ValidatedField<Double> pitch = ValidatedFields.pitch(4);
    private final ValidatedField<Double> margin = ValidatedFields.length(JobFields.STITCH_MARGIN, 1);
    private final JComboBox<ComboBoxItem<Integer>> back = ComboBoxItem.box("back-stitches");

    StitchForm(FormBinding<SheathSpec> sheath) {
        super("2 20 8 0");
        FormBinding<Stitching> stitching = sheath.to(SheathSpec::stitching, SheathSpec::with);
        line("Stitch length", (char) 0, pitch, "From hole to hole, as your iron has it: 4 mm, 5/32 in or 6 spi");
        stitching.tie(pitch, Stitching::pitchMm, (s, mm) -> new Stitching(s.marginMm(), mm, s.backStitches()));
        line("From the edge", (char) 0, margin, "From the row of stitches to the outer edge");
        stitching.tie(margin, Stitching::marginMm, (s, mm) -> new Stitching(mm, s.pitchMm(), s.backStitches()));
        IntStream.rangeClosed((int) JobFields.BACK_STITCHES.least(), (int) JobFields.BACK_STITCHES.greatest())
                .forEach(n -> back.addItem(new ComboBoxItem<>(n, n == 0 ? "None" : Integer.toString(n))));
        line("Back-stitches", (char) 0, back, "Sewn back over at either end of a seam, that it cannot come undone");
        stitching.tie(back, Stitching::backStitches, (s, n) -> new Stitching(s.marginMm(), s.pitchMm(), n));
    }

    String held(Stitching stitching) {
        return new Length(stitching.pitchMm()).inMillimetres() + " long, "
                + new Length(stitching.marginMm()).inMillimetres() + " from the edge";
    }
}
