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
import weltwright.job.SheathDesign;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Throat;

/** The form for the throat and the drain hole. */
final class ThroatForm extends FormPanel {
    private final PictureChoice<Throat.Shape> shape = new PictureChoice<>(
            "throat",
            2,
            SheathForm.PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(Throat.Shape.CURVED, "Hollowed in the face"),
                    new ComboBoxItem<>(Throat.Shape.STRAIGHT, "Straight"),
                    new ComboBoxItem<>(Throat.Shape.SLANTED_TO_EDGE, "Slanted, lower at the edge"),
                    new ComboBoxItem<>(Throat.Shape.SLANTED_TO_SPINE, "Slanted, lower at the spine")));
    private final ValidatedField<Double> depth = FieldFactory.length(SpecFields.THROAT_DEPTH, 0);
    private final JCheckBox eyelet = new JCheckBox("With an eyelet");
    private final ValidatedField<Double> drain = FieldFactory.length(SpecFields.DRAIN_HOLE, 0);

    ThroatForm(JobModel model, FormBinding<SheathSpec> sheath, TaskQueue drawing) {
        super("2 20 8 0");
        FormBinding<Throat> throat = sheath.nested(SheathSpec::throat, SheathSpec::withThroat);
        addPictures("Throat", shape, "How the open end is cut");
        throat.bind(shape, Throat::shape, Throat::withShape);
        ChoicePictures.install(shape, model, drawing, SheathDesign.Input::of, SheathPictures::paintThroat);
        addRow("Depth of the cut", (char) 0, depth, "How far down the hollow or the slant reaches");
        throat.bind(depth, Throat::depthMm, Throat::withDepthMm);
        FormBinding<DrainHole> hole = sheath.nested(SheathSpec::drain, SheathSpec::withDrain);
        eyelet.setName("drain eyelet");
        eyelet.setToolTipText("The eyelet is taken from your hardware, and gives the hole its size");
        addRow("Drain hole", (char) 0, drain, "Width of the hole at the tip that lets water out; 0 for none");
        hole.bind(drain, DrainHole::diameterMm, DrainHole::withDiameterMm);
        addRow("Lined", (char) 0, eyelet, eyelet.getToolTipText());
        hole.bind(eyelet, DrainHole::eyelet, DrainHole::withEyelet);
        model.subscribe(() -> {
            setRowVisible(depth, throat.current().shape() != Throat.Shape.STRAIGHT);
            setRowVisible(drain, !hole.current().eyelet());
        });
    }

    String summary(SheathSpec spec) {
        DrainHole hole = spec.drain();
        String drained = hole.eyelet()
                ? "drain hole with an eyelet"
                : hole.diameterMm() == 0 ? "no drain hole" : "drain hole " + unit().format(hole.diameterMm());
        return shape.lowerCaseLabelOf(spec.throat().shape()) + ", " + drained;
    }
}
