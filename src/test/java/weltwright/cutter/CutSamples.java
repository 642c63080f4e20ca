package weltwright.cutter;

import java.time.LocalDate;
import java.util.Optional;
import weltwright.knife.TestKnives;
import weltwright.paper.Heading;
import weltwright.sheath.BeltHold;
import weltwright.sheath.HandleStrap;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

/** Patterns to lay out. */
final class CutSamples {
    private CutSamples() {}

    /** Of a knife of this name. */
    static Heading heading(String knife) {
        return new Heading("", knife, LocalDate.of(2024, 3, 9), "");
    }

    /** A body with a tail, and a welt. */
    static Pattern folded() {
        return PatternMaker.make(TestKnives.dropPoint(), SheathSpec.standard(SheathKind.FOLDED));
    }

    /** Face, back, welts, a strap riveted on and one round the handle. */
    static Pattern panels() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS);
        BeltHold belt = spec.belt();
        return PatternMaker.make(
                TestKnives.leaf(),
                spec.with(new BeltHold(BeltHold.Style.RIVETED_STRAP, belt.beltWidthMm(), belt.beltThicknessMm()))
                        .withStrap(Optional.of(HandleStrap.USUAL)));
    }
}
