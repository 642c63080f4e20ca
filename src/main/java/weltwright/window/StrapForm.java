package weltwright.window;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.measure.Length;
import weltwright.sheath.HandleStrap;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.StrapLeather;

/** The strap that keeps the knife in. */
final class StrapForm extends Form {
    private final JCheckBox there = new JCheckBox("A strap with a snap");
    private final Entry<Double> height = Lines.length(Fields.STRAP_HEIGHT, HandleStrap.USUAL.aboveThroatMm());
    private final JComboBox<Choice<HandleStrap.Side>> opens = Choice.box(
            "strap opens",
            new Choice<>(HandleStrap.Side.RIGHT, "On the right"),
            new Choice<>(HandleStrap.Side.LEFT, "On the left"));
    private final Entry<Double> allowance = Lines.length(Fields.STRAP_ALLOWANCE, HandleStrap.USUAL.allowanceMm());

    private final Entry<Double> width = Lines.length(Fields.STRAP_WIDTH, StrapLeather.HANDLE.widthMm());
    private final Entry<OptionalDouble> leather = Lines.lengthIfAny(Fields.STRAP_LEATHER, mm -> mm);

    StrapForm(Bench bench, Ties<SheathSpec> sheath) {
        super("2 20 8 0");
        there.setName("strap");
        there.setToolTipText("Goes round the handle and keeps the knife in");
        wide(there);
        sheath.tie(
                there,
                spec -> spec.strap().isPresent(),
                (spec, wanted) -> spec.withStrap(wanted ? Optional.of(HandleStrap.USUAL) : Optional.empty()));
        Ties<HandleStrap> strap =
                sheath.to(spec -> spec.strap().orElse(HandleStrap.USUAL), (spec, s) -> spec.withStrap(Optional.of(s)));
        line("Above the throat", (char) 0, height, "From the throat to the middle of the strap");
        strap.tie(
                height,
                HandleStrap::aboveThroatMm,
                (s, mm) -> new HandleStrap(mm, s.opens(), s.allowanceMm(), s.leather()));
        line("Opens", (char) 0, opens, "Where its loose end lies, seen from the face with the tip down");
        strap.tie(
                opens,
                HandleStrap::opens,
                (s, to) -> new HandleStrap(s.aboveThroatMm(), to, s.allowanceMm(), s.leather()));
        line("Allowance", (char) 0, allowance, "How much longer than leather pulled tight round the handle");
        strap.tie(
                allowance,
                HandleStrap::allowanceMm,
                (s, mm) -> new HandleStrap(s.aboveThroatMm(), s.opens(), mm, s.leather()));
        Ties<StrapLeather> cut = strap.to(HandleStrap::leather, HandleStrap::with);
        line("Width", (char) 0, width, "Of the strap");
        cut.tie(width, StrapLeather::widthMm, StrapLeather::withWidthMm);
        line("Leather", (char) 0, leather, "Thickness of its leather; empty: cut from the sheath's own");
        cut.tie(leather, StrapLeather::thicknessMm, StrapLeather::withThicknessMm);
        bench.watch(() -> {
            boolean shown = sheath.now().strap().isPresent();
            List.of(height, allowance, width, leather).forEach(entry -> showLine(entry, shown));
            showLine(opens, shown);
        });
    }

    String held(SheathSpec spec) {
        return spec.strap()
                .map(s -> new Length(s.aboveThroatMm()).inMillimetres() + " above the throat, opens "
                        + Choice.lowerCaseWords(opens, s.opens()))
                .orElse("none");
    }
}
