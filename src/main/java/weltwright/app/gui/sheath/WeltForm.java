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
import weltwright.message.Messages;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.WeltSpec;

/** The form for the welt. */
final class WeltForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(WeltForm.class);

    /** Chosen by eye. */
    private static final int MAX_LAYERS_OFFERED = 6;

    private final JComboBox<ComboBoxItem<OptionalInt>> layers = ComboBoxItem.create(
            "welt layers", new ComboBoxItem<>(OptionalInt.empty(), TEXTS.text("welt-form.as-many-as-needed")));
    private final ValidatedField<List<Double>> leathers =
            FieldFactory.lengthList("leather for the welt", SpecFields.LEATHER_THICKNESS);
    private final ValidatedField<Double> inner = FieldFactory.length(SpecFields.WELT_INNER_MARGIN, 1);
    private final JCheckBox inTwo = new JCheckBox(TEXTS.text("welt-form.in-two-pieces"));

    WeltForm(FormBinding<SheathSpec> sheath) {
        super("2 20 8 0");
        FormBinding<WeltSpec> welt = sheath.nested(SheathSpec::welt, SheathSpec::withWelt);
        for (int n = 1; n <= MAX_LAYERS_OFFERED; n++) {
            layers.addItem(new ComboBoxItem<>(OptionalInt.of(n), Integer.toString(n)));
        }
        addRow(TEXTS.text("welt-form.layers"), layers, TEXTS.text("welt-form.as-many-as-needed-make"));
        welt.bind(layers, WeltSpec::layers, WeltSpec::withLayers);
        addRow(TEXTS.text("welt-form.leather-for-it"), leathers, TEXTS.text("welt-form.what-you-have-for-it"));
        welt.bind(leathers, WeltSpec::leathersMm, WeltSpec::withLeathersMm);
        addRow(TEXTS.text("welt-form.inside-the-row"), inner, TEXTS.text("welt-form.welt-between-the-knife-and"));
        welt.bind(inner, WeltSpec::innerMarginMm, WeltSpec::withInnerMarginMm);
        inTwo.setName("welt in two");
        inTwo.setToolTipText(TEXTS.text("welt-form.they-meet-end-to-end"));
        addRow(TEXTS.text("welt-form.cut"), inTwo, inTwo.getToolTipText());
        welt.bind(inTwo, WeltSpec::inTwo, WeltSpec::withInTwo);
    }

    String summary(WeltSpec welt) {
        String many = welt.layers().isEmpty()
                ? TEXTS.text("welt-form.layers-as-needed")
                : welt.layers().getAsInt()
                        + (welt.layers().getAsInt() == 1
                                ? TEXTS.text("welt-form.layer")
                                : TEXTS.text("welt-form.layers-2"));
        return welt.inTwo()
                ? TEXTS.text("welt-form.inside-the-row-in-two", many, unit().format(welt.innerMarginMm()))
                : TEXTS.text("welt-form.inside-the-row-2", many, unit().format(welt.innerMarginMm()));
    }
}
