package weltwright.window;

import java.util.List;
import java.util.OptionalInt;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.measure.Length;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.WeltChoice;

/** The strip of leather between the edge and the stitches. */
final class WeltForm extends Form {
    private static final int MOST_LAYERS_OFFERED = 6;

    private final JComboBox<Choice<OptionalInt>> layers =
            Choice.box("welt layers", new Choice<>(OptionalInt.empty(), "As many as needed"));
    private final Entry<List<Double>> leathers = Lines.lengths("leather for the welt", Fields.LEATHER_THICKNESS);
    private final Entry<Double> inner = Lines.length(Fields.WELT_INNER_MARGIN, 1);
    private final JCheckBox inTwo = new JCheckBox("In two pieces");

    WeltForm(Ties<SheathSpec> sheath) {
        super("2 20 8 0");
        Ties<WeltChoice> welt = sheath.to(SheathSpec::welt, SheathSpec::with);
        for (int n = 1; n <= MOST_LAYERS_OFFERED; n++) {
            layers.addItem(new Choice<>(OptionalInt.of(n), Integer.toString(n)));
        }
        line("Layers", (char) 0, layers, "As many as needed make the welt at least as thick as the blade");
        welt.tie(
                layers,
                WeltChoice::layers,
                (w, to) -> new WeltChoice(to, w.innerMarginMm(), w.leathersMm(), w.inTwo()));
        line(
                "Leather for it",
                (char) 0,
                leathers,
                "What you have for it, such as 3 mm, 1.5 mm: the best stack is laid of these. Empty: the sheath's own");
        welt.tie(
                leathers,
                WeltChoice::leathersMm,
                (w, mm) -> new WeltChoice(w.layers(), w.innerMarginMm(), mm, w.inTwo()));
        line("Inside the row", (char) 0, inner, "Welt between the knife and the row of stitches");
        welt.tie(
                inner, WeltChoice::innerMarginMm, (w, mm) -> new WeltChoice(w.layers(), mm, w.leathersMm(), w.inTwo()));
        inTwo.setName("welt in two");
        inTwo.setToolTipText(
                "They meet end to end, and lie closer on the leather than one long piece, which saves some");
        line("Cut", (char) 0, inTwo, inTwo.getToolTipText());
        welt.tie(
                inTwo, WeltChoice::inTwo, (w, to) -> new WeltChoice(w.layers(), w.innerMarginMm(), w.leathersMm(), to));
    }

    String held(WeltChoice welt) {
        String many = welt.layers().isEmpty()
                ? "layers as needed"
                : welt.layers().getAsInt() + (welt.layers().getAsInt() == 1 ? " layer" : " layers");
        return many + ", " + new Length(welt.innerMarginMm()).inMillimetres() + " inside the row"
                + (welt.inTwo() ? ", in two" : "");
    }
}
