package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

class FinalChecksTest {
    private static String checks(SheathSpec spec) {
        return String.join(" ", FinalChecks.of(PatternMaker.make(TestKnives.dropPoint(), spec)));
    }

    @Test
    void onlyWhatTheSheathHasIsChecked() {
        SheathSpec plain = TestSpecs.bladeAlone(SheathKind.FOLDED).withDrain(DrainHole.NONE);

        assertThat(checks(plain))
                .contains("upside down", "No stitch is loose", "tape is off")
                .doesNotContain("snap", "rivet", "ring ", "drain");
        assertThat(checks(plain.withDrain(DrainHole.USUAL))).contains("drain hole");
        assertThat(checks(plain.withStrap(Optional.of(HandleStrap.USUAL))))
                .contains("The snap closes", "No rivet turns");
        assertThat(checks(plain.withBelt(new BeltAttachment(BeltAttachment.Style.HANGING_RING, 38, 4))))
                .contains("The ring swings", "through its cover");
    }
}
