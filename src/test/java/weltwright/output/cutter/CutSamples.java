package weltwright.output.cutter;

import java.time.LocalDate;
import java.util.Optional;
import weltwright.knife.TestKnives;
import weltwright.output.PageHeading;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** Patterns to lay out. */
final class CutSamples {
    private CutSamples() {}

    /** Of a knife of this name. */
    static PageHeading heading(String knife) {
        return new PageHeading("", knife, LocalDate.of(2024, 3, 9), "");
    }

    /** A body with a tail, and a welt. */
    static Pattern folded() {
        return PatternMaker.make(TestKnives.dropPoint(), SheathSpec.standard(SheathKind.FOLDED));
    }

    /** Face, back, welts, a strap riveted on and one round the handle. */
    static Pattern panels() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS);
        BeltAttachment belt = spec.belt();
        return PatternMaker.make(
                TestKnives.leaf(),
                spec.withBelt(new BeltAttachment(
                                BeltAttachment.Style.RIVETED_STRAP, belt.beltWidthMm(), belt.beltThicknessMm()))
                        .withStrap(Optional.of(HandleStrap.USUAL)));
    }
}
