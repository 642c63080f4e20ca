package weltwright.app.gui.sheath;

import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.job.JobFields;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.StrapLeather;
import weltwright.units.Length;

/** How the sheath hangs on its belt. */
final class BeltForm extends FormPanel {
    private static final double MILLIONTHS = 1e6; // of a degree: below what a file's radians give back

    private final JComboBox<ComboBoxItem<BeltAttachment.Style>> style = ComboBoxItem.box(
            "belt loop",
            new ComboBoxItem<>(BeltAttachment.Style.TAIL, "Tail of the back, folded down"),
            new ComboBoxItem<>(BeltAttachment.Style.RIVETED_STRAP, "Strap, riveted on"),
            new ComboBoxItem<>(BeltAttachment.Style.SEWN_STRAP, "Strap, sewn on"),
            new ComboBoxItem<>(BeltAttachment.Style.HANGING_RING, "Strap with a ring to hang from"));
    private final ValidatedField<Double> width = ValidatedFields.length(JobFields.BELT_WIDTH, 1);
    private final ValidatedField<Double> thickness = ValidatedFields.length(JobFields.BELT_THICKNESS, 1);
    private final ValidatedField<Double> strapWidth =
            ValidatedFields.length(JobFields.BELT_STRAP_WIDTH, StrapLeather.BELT.widthMm());
    private final ValidatedField<OptionalDouble> strapLeather =
            ValidatedFields.lengthIfAny(JobFields.BELT_STRAP_LEATHER, mm -> mm);
    private final JComboBox<ComboBoxItem<CarryPosition.Edge>> edge = ComboBoxItem.box(
            "edge looks",
            new ComboBoxItem<>(CarryPosition.Edge.FORWARD, "Forward"),
            new ComboBoxItem<>(CarryPosition.Edge.BACK, "Back"));
    private final ValidatedField<Double> tilt = ValidatedFields.signed(JobFields.TILT, "°", 0);

    BeltForm(JobModel bench, FormBinding<SheathSpec> sheath, FormBinding<CarryPosition> carry) {
        super("2 20 8 0");
        FormBinding<BeltAttachment> belt = sheath.to(SheathSpec::belt, SheathSpec::with);
        line("Belt loop", (char) 0, style, "What holds the sheath on the belt");
        belt.tie(style, BeltAttachment::style, BeltAttachment::with);
        line("Belt width", (char) 0, width, "Of the belt that must pass");
        belt.tie(
                width,
                BeltAttachment::beltWidthMm,
                (b, mm) -> new BeltAttachment(b.style(), mm, b.beltThicknessMm(), b.strap()));
        line("Belt thickness", (char) 0, thickness, "Of that belt");
        belt.tie(
                thickness,
                BeltAttachment::beltThicknessMm,
                (b, mm) -> new BeltAttachment(b.style(), b.beltWidthMm(), mm, b.strap()));
        FormBinding<StrapLeather> strap = belt.to(BeltAttachment::strap, BeltAttachment::withStrap);
        line("Strap width", (char) 0, strapWidth, "Of the strap over the belt");
        strap.tie(strapWidth, StrapLeather::widthMm, StrapLeather::withWidthMm);
        line("Strap leather", (char) 0, strapLeather, "Thickness of its leather; empty: cut from the sheath's own");
        strap.tie(strapLeather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        line("Edge looks", (char) 0, edge, "Where the knife's edge looks while the sheath is worn");
        carry.tie(edge, CarryPosition::edge, (c, to) -> new CarryPosition(c.hand(), to, c.tiltRad()));
        line("Leans by", (char) 0, tilt, "How far the handle leans forward, in degrees; with a minus it leans back");
        carry.tie(tilt, BeltForm::degrees, (c, to) -> new CarryPosition(c.hand(), c.edge(), Math.toRadians(to)));
        // From a ring a sheath hangs as it likes.
        bench.watch(() -> showLine(tilt, belt.now().style() != BeltAttachment.Style.HANGING_RING));
        bench.watch(() -> List.of(strapWidth, strapLeather)
                .forEach(entry -> showLine(entry, belt.now().style() != BeltAttachment.Style.TAIL)));
    }

    String held(SheathSpec spec) {
        double leans = spec.belt().style() == BeltAttachment.Style.HANGING_RING ? 0 : degrees(spec.carry());
        return ComboBoxItem.lowerCaseWords(style, spec.belt().style()) + ", belt "
                + new Length(spec.belt().beltWidthMm()).inMillimetres()
                + (leans == 0 ? "" : ", leans " + (leans > 0 ? "forward" : "back"))
                + (spec.carry().edge() == CarryPosition.Edge.BACK ? ", edge back" : "");
    }

    private static double degrees(CarryPosition carry) {
        return Math.round(Math.toDegrees(carry.tiltRad()) * MILLIONTHS) / MILLIONTHS;
    }
}
