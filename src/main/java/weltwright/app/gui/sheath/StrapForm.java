package weltwright.app.gui.sheath;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JCheckBox;
import weltwright.app.gui.form.ChoicePictures;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.PictureChoice;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.message.Messages;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.StrapLeather;

/** The form for the strap round the handle. */
final class StrapForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(StrapForm.class);

    private final JCheckBox present = new JCheckBox(TEXTS.text("strap-form.a-strap-with-a-snap"));
    private final ValidatedField<Double> height =
            FieldFactory.length(SpecFields.STRAP_HEIGHT, HandleStrap.USUAL.aboveThroatMm());
    private final PictureChoice<HandleStrap.Side> opens = new PictureChoice<>(
            "strap opens",
            2,
            SheathForm.PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(HandleStrap.Side.RIGHT, TEXTS.text("strap-form.on-the-right")),
                    new ComboBoxItem<>(HandleStrap.Side.LEFT, TEXTS.text("strap-form.on-the-left"))));
    private final ValidatedField<Double> allowance =
            FieldFactory.length(SpecFields.STRAP_ALLOWANCE, HandleStrap.USUAL.allowanceMm());

    private final ValidatedField<Double> width =
            FieldFactory.length(SpecFields.STRAP_WIDTH, StrapLeather.HANDLE.widthMm());
    private final ValidatedField<OptionalDouble> leather =
            FieldFactory.optionalLength(SpecFields.STRAP_LEATHER, mm -> mm);

    StrapForm(JobModel model, FormBinding<SheathSpec> sheath, TaskQueue drawing) {
        super("2 20 8 0");
        present.setName("strap");
        present.setToolTipText(TEXTS.text("strap-form.goes-round-the-handle-and"));
        addFullWidth(present);
        sheath.bind(
                present,
                spec -> spec.strap().isPresent(),
                (spec, wanted) -> spec.withStrap(wanted ? Optional.of(HandleStrap.USUAL) : Optional.empty()));
        FormBinding<HandleStrap> strap = sheath.nested(
                spec -> spec.strap().orElse(HandleStrap.USUAL), (spec, s) -> spec.withStrap(Optional.of(s)));
        addRow(TEXTS.text("strap-form.above-the-throat"), height, TEXTS.text("strap-form.from-the-throat-to-the"));
        strap.bind(height, HandleStrap::aboveThroatMm, HandleStrap::withAboveThroatMm);
        addPictures(TEXTS.text("strap-form.opens"), opens, TEXTS.text("strap-form.where-its-loose-end-lies"));
        strap.bind(opens, HandleStrap::opens, HandleStrap::withOpens);
        ChoicePictures.install(opens, model, drawing, SheathPictures::straps, SheathPictures::paintStrap);
        addRow(TEXTS.text("strap-form.allowance"), allowance, TEXTS.text("strap-form.how-much-longer-than-leather"));
        strap.bind(allowance, HandleStrap::allowanceMm, HandleStrap::withAllowanceMm);
        FormBinding<StrapLeather> cut = strap.nested(HandleStrap::leather, HandleStrap::withLeather);
        addRow(TEXTS.text("strap-form.width"), width, TEXTS.text("strap-form.of-the-strap"));
        cut.bind(width, StrapLeather::widthMm, StrapLeather::withWidthMm);
        addRow(TEXTS.text("strap-form.leather"), leather, TEXTS.text("strap-form.thickness-of-its-leather-empty"));
        cut.bind(leather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        model.subscribe(() -> {
            boolean shown = sheath.current().strap().isPresent();
            List.of(height, allowance, width, leather).forEach(field -> setRowVisible(field, shown));
            setRowVisible(opens, shown);
        });
    }

    String summary(SheathSpec spec) {
        return spec.strap()
                .map(s -> TEXTS.text(
                        "strap-form.above-the-throat-opens",
                        unit().format(s.aboveThroatMm()),
                        opens.lowerCaseLabelOf(s.opens())))
                .orElse(TEXTS.text("strap-form.none"));
    }
}
