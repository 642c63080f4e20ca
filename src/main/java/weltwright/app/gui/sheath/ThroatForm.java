package weltwright.app.gui.sheath;

import java.util.List;
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
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Throat;

/** The form for the throat and the drain hole. */
final class ThroatForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(ThroatForm.class);

    private final PictureChoice<Throat.Shape> shape = new PictureChoice<>(
            "throat",
            2,
            SheathForm.PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(Throat.Shape.CURVED, TEXTS.text("throat-form.hollowed-in-the-face")),
                    new ComboBoxItem<>(Throat.Shape.STRAIGHT, TEXTS.text("throat-form.straight")),
                    new ComboBoxItem<>(
                            Throat.Shape.SLANTED_TO_EDGE, TEXTS.text("throat-form.slanted-lower-at-the-edge")),
                    new ComboBoxItem<>(
                            Throat.Shape.SLANTED_TO_SPINE, TEXTS.text("throat-form.slanted-lower-at-the-spine"))));
    private final ValidatedField<Double> depth = FieldFactory.length(SpecFields.THROAT_DEPTH, 0);
    private final JCheckBox eyelet = new JCheckBox(TEXTS.text("throat-form.with-an-eyelet"));
    private final ValidatedField<Double> drain = FieldFactory.length(SpecFields.DRAIN_HOLE, 0);

    ThroatForm(JobModel model, FormBinding<SheathSpec> sheath, TaskQueue drawing) {
        super("2 20 8 0");
        FormBinding<Throat> throat = sheath.nested(SheathSpec::throat, SheathSpec::withThroat);
        addPictures(TEXTS.text("throat-form.throat"), shape, TEXTS.text("throat-form.how-the-open-end-is"));
        throat.bind(shape, Throat::shape, Throat::withShape);
        ChoicePictures.install(shape, model, drawing, SheathPictures::throats, SheathPictures::paintThroat);
        addRow(TEXTS.text("throat-form.depth-of-the-cut"), depth, TEXTS.text("throat-form.how-far-down-the-hollow"));
        throat.bind(depth, Throat::depthMm, Throat::withDepthMm);
        FormBinding<DrainHole> hole = sheath.nested(SheathSpec::drain, SheathSpec::withDrain);
        eyelet.setName("drain eyelet");
        eyelet.setToolTipText(TEXTS.text("throat-form.the-eyelet-is-taken-from"));
        addRow(TEXTS.text("throat-form.drain-hole"), drain, TEXTS.text("throat-form.width-of-the-hole-at"));
        hole.bind(drain, DrainHole::diameterMm, DrainHole::withDiameterMm);
        addRow(TEXTS.text("throat-form.lined"), eyelet, eyelet.getToolTipText());
        hole.bind(eyelet, DrainHole::eyelet, DrainHole::withEyelet);
        model.subscribe(() -> {
            setRowVisible(depth, throat.current().shape() != Throat.Shape.STRAIGHT);
            setRowVisible(drain, !hole.current().eyelet());
        });
    }

    String summary(SheathSpec spec) {
        DrainHole hole = spec.drain();
        String drained = hole.eyelet()
                ? TEXTS.text("throat-form.drain-hole-with-an-eyelet")
                : hole.diameterMm() == 0
                        ? TEXTS.text("throat-form.no-drain-hole")
                        : TEXTS.text("throat-form.drain-hole-2", unit().format(hole.diameterMm()));
        return shape.lowerCaseLabelOf(spec.throat().shape()) + ", " + drained;
    }
}
