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
import weltwright.message.Messages;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.StrapLeather;

/** The form for the belt attachment and the carry position. */
final class BeltForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(BeltForm.class);

    private static final double ROUNDING = 1e6; // per degree; coarser than the rounding error of the stored radians

    private final PictureChoice<BeltAttachment.Style> style = new PictureChoice<>(
            "belt loop",
            2,
            SheathForm.PICTURE_PX,
            List.of(
                    new ComboBoxItem<>(BeltAttachment.Style.TAIL, TEXTS.text("belt-form.tail-of-the-back-folded")),
                    new ComboBoxItem<>(BeltAttachment.Style.RIVETED_STRAP, TEXTS.text("belt-form.strap-riveted-on")),
                    new ComboBoxItem<>(BeltAttachment.Style.SEWN_STRAP, TEXTS.text("belt-form.strap-sewn-on")),
                    new ComboBoxItem<>(
                            BeltAttachment.Style.HANGING_RING, TEXTS.text("belt-form.strap-with-a-ring-to"))));
    private final ValidatedField<Double> width = FieldFactory.length(SpecFields.BELT_WIDTH, 1);
    private final ValidatedField<Double> thickness = FieldFactory.length(SpecFields.BELT_THICKNESS, 1);
    private final ValidatedField<Double> strapWidth =
            FieldFactory.length(SpecFields.BELT_STRAP_WIDTH, StrapLeather.BELT.widthMm());
    private final ValidatedField<OptionalDouble> strapLeather =
            FieldFactory.optionalLength(SpecFields.BELT_STRAP_LEATHER, mm -> mm);
    private final JComboBox<ComboBoxItem<CarryPosition.Edge>> edge = ComboBoxItem.create(
            "edge looks",
            new ComboBoxItem<>(CarryPosition.Edge.FORWARD, TEXTS.text("belt-form.forward")),
            new ComboBoxItem<>(CarryPosition.Edge.BACK, TEXTS.text("belt-form.back")));
    private final ValidatedField<Double> tilt = FieldFactory.numberWithUnit(SpecFields.TILT, "°", 0);

    BeltForm(JobModel model, FormBinding<SheathSpec> sheath, FormBinding<CarryPosition> carry, TaskQueue drawing) {
        super("2 20 8 0");
        FormBinding<BeltAttachment> belt = sheath.nested(SheathSpec::belt, SheathSpec::withBelt);
        addPictures(TEXTS.text("belt-form.belt-loop"), style, TEXTS.text("belt-form.what-holds-the-sheath-on"));
        belt.bind(style, BeltAttachment::style, BeltAttachment::withStyle);
        ChoicePictures.install(style, model, drawing, SheathPictures::belts, SheathPictures::paintBelt);
        addRow(TEXTS.text("belt-form.belt-width"), width, TEXTS.text("belt-form.of-the-belt-that-must"));
        belt.bind(width, BeltAttachment::beltWidthMm, BeltAttachment::withBeltWidthMm);
        addRow(TEXTS.text("belt-form.belt-thickness"), thickness, TEXTS.text("belt-form.of-that-belt"));
        belt.bind(thickness, BeltAttachment::beltThicknessMm, BeltAttachment::withBeltThicknessMm);
        FormBinding<StrapLeather> strap = belt.nested(BeltAttachment::strap, BeltAttachment::withStrap);
        addRow(TEXTS.text("belt-form.strap-width"), strapWidth, TEXTS.text("belt-form.of-the-strap-over-the"));
        strap.bind(strapWidth, StrapLeather::widthMm, StrapLeather::withWidthMm);
        addRow(
                TEXTS.text("belt-form.strap-leather"),
                strapLeather,
                TEXTS.text("belt-form.thickness-of-its-leather-empty"));
        strap.bind(strapLeather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        addRow(TEXTS.text("belt-form.edge-looks"), edge, TEXTS.text("belt-form.where-the-knife-s-edge"));
        carry.bind(edge, CarryPosition::edge, CarryPosition::withEdge);
        addRow(TEXTS.text("belt-form.leans-by"), tilt, TEXTS.text("belt-form.how-far-the-handle-leans"));
        carry.bind(tilt, BeltForm::degrees, (c, to) -> new CarryPosition(c.hand(), c.edge(), Math.toRadians(to)));
        // The tilt of a sheath that hangs from a ring is not fixed.
        model.subscribe(() -> setRowVisible(tilt, belt.current().style() != BeltAttachment.Style.HANGING_RING));
        model.subscribe(() -> List.of(strapWidth, strapLeather)
                .forEach(field -> setRowVisible(field, belt.current().style() != BeltAttachment.Style.TAIL)));
    }

    String summary(SheathSpec spec) {
        double leans = spec.belt().style() == BeltAttachment.Style.HANGING_RING ? 0 : degrees(spec.carry());
        return TEXTS.text(
                "belt-form.belt",
                style.lowerCaseLabelOf(spec.belt().style()),
                unit().format(spec.belt().beltWidthMm()),
                leans == 0
                        ? ""
                        : (leans > 0 ? TEXTS.text("belt-form.leans-forward") : TEXTS.text("belt-form.leans-back")),
                spec.carry().edge() == CarryPosition.Edge.BACK ? TEXTS.text("belt-form.edge-back") : "");
    }

    private static double degrees(CarryPosition carry) {
        return Math.round(Math.toDegrees(carry.tiltRad()) * ROUNDING) / ROUNDING;
    }
}
