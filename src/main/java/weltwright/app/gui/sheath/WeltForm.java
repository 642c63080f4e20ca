package weltwright.app.gui.sheath;

import java.util.List;
import java.util.OptionalInt;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.WeltSpec;

/** The form for the welt. */
final class WeltForm extends FormPanel {
    /** Chosen by eye. */
    private static final int MAX_LAYERS_OFFERED = 6;

    private final JComboBox<ComboBoxItem<OptionalInt>> layers =
            ComboBoxItem.create("welt layers", new ComboBoxItem<>(OptionalInt.empty(), "As many as needed"));
    private final ValidatedField<List<Double>> leathers =
            FieldFactory.lengthList("leather for the welt", SpecFields.LEATHER_THICKNESS);
    private final ValidatedField<Double> inner = FieldFactory.length(SpecFields.WELT_INNER_MARGIN, 1);
    private final JCheckBox inTwo = new JCheckBox("In two pieces");

    WeltForm(FormBinding<SheathSpec> sheath) {
        super("2 20 8 0");
        FormBinding<WeltSpec> welt = sheath.nested(SheathSpec::welt, SheathSpec::withWelt);
        for (int n = 1; n <= MAX_LAYERS_OFFERED; n++) {
            layers.addItem(new ComboBoxItem<>(OptionalInt.of(n), Integer.toString(n)));
        }
        addRow("Layers", (char) 0, layers, "As many as needed make the welt at least as thick as the blade");
        welt.bind(layers, WeltSpec::layers, WeltSpec::withLayers);
        addRow(
                "Leather for it",
                (char) 0,
                leathers,
                "What you have for it, such as 3 mm, 1.5 mm: the best stack is laid of these. Empty: the sheath's own");
        welt.bind(leathers, WeltSpec::leathersMm, WeltSpec::withLeathersMm);
        addRow("Inside the row", (char) 0, inner, "Welt between the knife and the row of stitches");
        welt.bind(inner, WeltSpec::innerMarginMm, WeltSpec::withInnerMarginMm);
        inTwo.setName("welt in two");
        inTwo.setToolTipText(
                "They meet end to end, and lie closer on the leather than one long piece, which saves some");
        addRow("Cut", (char) 0, inTwo, inTwo.getToolTipText());
        welt.bind(inTwo, WeltSpec::inTwo, WeltSpec::withInTwo);
    }

    String summary(WeltSpec welt) {
        String many = welt.layers().isEmpty()
                ? "layers as needed"
                : welt.layers().getAsInt() + (welt.layers().getAsInt() == 1 ? " layer" : " layers");
        return many + ", " + unit().format(welt.innerMarginMm()) + " inside the row" + (welt.inTwo() ? ", in two" : "");
    }
}
