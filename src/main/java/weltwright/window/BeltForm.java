package weltwright.window;

import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.measure.Length;
import weltwright.sheath.BeltHold;
import weltwright.sheath.Carry;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.StrapLeather;

/** How the sheath hangs on its belt. */
final class BeltForm extends Form {
    private static final double MILLIONTHS = 1e6; // of a degree: below what a file's radians give back

    private final JComboBox<Choice<BeltHold.Style>> style = Choice.box(
            "belt loop",
            new Choice<>(BeltHold.Style.TAIL, "Tail of the back, folded down"),
            new Choice<>(BeltHold.Style.RIVETED_STRAP, "Strap, riveted on"),
            new Choice<>(BeltHold.Style.SEWN_STRAP, "Strap, sewn on"),
            new Choice<>(BeltHold.Style.HANGING_RING, "Strap with a ring to hang from"));
    private final Entry<Double> width = Lines.length(Fields.BELT_WIDTH, 1);
    private final Entry<Double> thickness = Lines.length(Fields.BELT_THICKNESS, 1);
    private final Entry<Double> strapWidth = Lines.length(Fields.BELT_STRAP_WIDTH, StrapLeather.BELT.widthMm());
    private final Entry<OptionalDouble> strapLeather = Lines.lengthIfAny(Fields.BELT_STRAP_LEATHER, mm -> mm);
    private final JComboBox<Choice<Carry.Edge>> edge = Choice.box(
            "edge looks", new Choice<>(Carry.Edge.FORWARD, "Forward"), new Choice<>(Carry.Edge.BACK, "Back"));
    private final Entry<Double> tilt = Lines.signed(Fields.TILT, "°", 0);

    BeltForm(Bench bench, Ties<SheathSpec> sheath, Ties<Carry> carry) {
        super("2 20 8 0");
        Ties<BeltHold> belt = sheath.to(SheathSpec::belt, SheathSpec::with);
        line("Belt loop", (char) 0, style, "What holds the sheath on the belt");
        belt.tie(style, BeltHold::style, BeltHold::with);
        line("Belt width", (char) 0, width, "Of the belt that must pass");
        belt.tie(width, BeltHold::beltWidthMm, (b, mm) -> new BeltHold(b.style(), mm, b.beltThicknessMm(), b.strap()));
        line("Belt thickness", (char) 0, thickness, "Of that belt");
        belt.tie(
                thickness,
                BeltHold::beltThicknessMm,
                (b, mm) -> new BeltHold(b.style(), b.beltWidthMm(), mm, b.strap()));
        Ties<StrapLeather> strap = belt.to(BeltHold::strap, BeltHold::withStrap);
        line("Strap width", (char) 0, strapWidth, "Of the strap over the belt");
        strap.tie(strapWidth, StrapLeather::widthMm, StrapLeather::withWidthMm);
        line("Strap leather", (char) 0, strapLeather, "Thickness of its leather; empty: cut from the sheath's own");
        strap.tie(strapLeather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        line("Edge looks", (char) 0, edge, "Where the knife's edge looks while the sheath is worn");
        carry.tie(edge, Carry::edge, (c, to) -> new Carry(c.hand(), to, c.tiltRad()));
        line("Leans by", (char) 0, tilt, "How far the handle leans forward, in degrees; with a minus it leans back");
        carry.tie(tilt, BeltForm::degrees, (c, to) -> new Carry(c.hand(), c.edge(), Math.toRadians(to)));
        // From a ring a sheath hangs as it likes.
        bench.watch(() -> showLine(tilt, belt.now().style() != BeltHold.Style.HANGING_RING));
        bench.watch(() -> List.of(strapWidth, strapLeather)
                .forEach(entry -> showLine(entry, belt.now().style() != BeltHold.Style.TAIL)));
    }

    String held(SheathSpec spec) {
        double leans = spec.belt().style() == BeltHold.Style.HANGING_RING ? 0 : degrees(spec.carry());
        return Choice.lowerCaseWords(style, spec.belt().style()) + ", belt "
                + new Length(spec.belt().beltWidthMm()).inMillimetres()
                + (leans == 0 ? "" : ", leans " + (leans > 0 ? "forward" : "back"))
                + (spec.carry().edge() == Carry.Edge.BACK ? ", edge back" : "");
    }

    private static double degrees(Carry carry) {
        return Math.round(Math.toDegrees(carry.tiltRad()) * MILLIONTHS) / MILLIONTHS;
    }
}
