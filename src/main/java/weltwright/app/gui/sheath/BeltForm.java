package weltwright.app.gui.sheath;

import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JComboBox;
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
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.StrapLeather;

/** The form for the belt attachment and the carry position. */
final class BeltForm extends FormPanel {
    private static final double ROUNDING = 1e6; // per degree; coarser than the rounding error of the stored radians

    private final PictureChoice<BeltAttachment.Style> style = new PictureChoice<>(
            "belt loop",
            2,
            SheathForm.PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(BeltAttachment.Style.TAIL, "Tail of the back, folded down"),
                    new ComboBoxItem<>(BeltAttachment.Style.RIVETED_STRAP, "Strap, riveted on"),
                    new ComboBoxItem<>(BeltAttachment.Style.SEWN_STRAP, "Strap, sewn on"),
                    new ComboBoxItem<>(BeltAttachment.Style.HANGING_RING, "Strap with a ring to hang from")));
    private final ValidatedField<Double> width = FieldFactory.length(SpecFields.BELT_WIDTH, 1);
    private final ValidatedField<Double> thickness = FieldFactory.length(SpecFields.BELT_THICKNESS, 1);
    private final ValidatedField<Double> strapWidth =
            FieldFactory.length(SpecFields.BELT_STRAP_WIDTH, StrapLeather.BELT.widthMm());
    private final ValidatedField<OptionalDouble> strapLeather =
            FieldFactory.optionalLength(SpecFields.BELT_STRAP_LEATHER, mm -> mm);
    private final JComboBox<ComboBoxItem<CarryPosition.Edge>> edge = ComboBoxItem.create(
            "edge looks",
            new ComboBoxItem<>(CarryPosition.Edge.FORWARD, "Forward"),
            new ComboBoxItem<>(CarryPosition.Edge.BACK, "Back"));
    private final ValidatedField<Double> tilt = FieldFactory.numberWithUnit(SpecFields.TILT, "°", 0);

    BeltForm(JobModel model, FormBinding<SheathSpec> sheath, FormBinding<CarryPosition> carry, TaskQueue drawing) {
        super("2 20 8 0");
        FormBinding<BeltAttachment> belt = sheath.nested(SheathSpec::belt, SheathSpec::withBelt);
        addPictures("Belt loop", style, "What holds the sheath on the belt");
        belt.bind(style, BeltAttachment::style, BeltAttachment::withStyle);
        ChoicePictures.install(style, model, drawing, SheathDesign.Input::of, SheathPictures::paintBelt);
        addRow("Belt width", (char) 0, width, "Of the belt that must pass");
        belt.bind(width, BeltAttachment::beltWidthMm, BeltAttachment::withBeltWidthMm);
        addRow("Belt thickness", (char) 0, thickness, "Of that belt");
        belt.bind(thickness, BeltAttachment::beltThicknessMm, BeltAttachment::withBeltThicknessMm);
        FormBinding<StrapLeather> strap = belt.nested(BeltAttachment::strap, BeltAttachment::withStrap);
        addRow("Strap width", (char) 0, strapWidth, "Of the strap over the belt");
        strap.bind(strapWidth, StrapLeather::widthMm, StrapLeather::withWidthMm);
        addRow("Strap leather", (char) 0, strapLeather, "Thickness of its leather; empty: cut from the sheath's own");
        strap.bind(strapLeather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        addRow("Edge looks", (char) 0, edge, "Where the knife's edge looks while the sheath is worn");
        carry.bind(edge, CarryPosition::edge, CarryPosition::withEdge);
        addRow("Leans by", (char) 0, tilt, "How far the handle leans forward, in degrees; with a minus it leans back");
        carry.bind(tilt, BeltForm::degrees, (c, to) -> new CarryPosition(c.hand(), c.edge(), Math.toRadians(to)));
        // The tilt of a sheath that hangs from a ring is not fixed.
        model.subscribe(() -> setRowVisible(tilt, belt.current().style() != BeltAttachment.Style.HANGING_RING));
        model.subscribe(() -> List.of(strapWidth, strapLeather)
                .forEach(field -> setRowVisible(field, belt.current().style() != BeltAttachment.Style.TAIL)));
    }

    String summary(SheathSpec spec) {
        double leans = spec.belt().style() == BeltAttachment.Style.HANGING_RING ? 0 : degrees(spec.carry());
        return style.lowerCaseLabelOf(spec.belt().style()) + ", belt "
                + unit().format(spec.belt().beltWidthMm())
                + (leans == 0 ? "" : ", leans " + (leans > 0 ? "forward" : "back"))
                + (spec.carry().edge() == CarryPosition.Edge.BACK ? ", edge back" : "");
    }

    private static double degrees(CarryPosition carry) {
        return Math.round(Math.toDegrees(carry.tiltRad()) * ROUNDING) / ROUNDING;
    }
}
