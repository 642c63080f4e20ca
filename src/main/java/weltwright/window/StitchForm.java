package weltwright.window;

import java.util.stream.IntStream;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.measure.Length;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.Stitching;

/** How the sheath is sewn. */
final class StitchForm extends Form {
    private final Entry<Double> pitch = Lines.pitch(4);
    private final Entry<Double> margin = Lines.length(Fields.STITCH_MARGIN, 1);
    private final JComboBox<Choice<Integer>> back = Choice.box("back-stitches");

    StitchForm(Ties<SheathSpec> sheath) {
        super("2 20 8 0");
        Ties<Stitching> stitching = sheath.to(SheathSpec::stitching, SheathSpec::with);
        line("Stitch length", (char) 0, pitch, "From hole to hole, as your iron has it: 4 mm, 5/32 in or 6 spi");
        stitching.tie(pitch, Stitching::pitchMm, (s, mm) -> new Stitching(s.marginMm(), mm, s.backStitches()));
        line("From the edge", (char) 0, margin, "From the row of stitches to the outer edge");
        stitching.tie(margin, Stitching::marginMm, (s, mm) -> new Stitching(mm, s.pitchMm(), s.backStitches()));
        IntStream.rangeClosed((int) Fields.BACK_STITCHES.least(), (int) Fields.BACK_STITCHES.greatest())
                .forEach(n -> back.addItem(new Choice<>(n, n == 0 ? "None" : Integer.toString(n))));
        line("Back-stitches", (char) 0, back, "Sewn back over at either end of a seam, that it cannot come undone");
        stitching.tie(back, Stitching::backStitches, (s, n) -> new Stitching(s.marginMm(), s.pitchMm(), n));
    }

    String held(Stitching stitching) {
        return new Length(stitching.pitchMm()).inMillimetres() + " long, "
                + new Length(stitching.marginMm()).inMillimetres() + " from the edge";
    }
}
