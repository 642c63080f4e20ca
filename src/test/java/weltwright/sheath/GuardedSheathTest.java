package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.trouble.Trouble;

/**
 * A sheath for a knife with a guard. Its guard is a cross of 6 mm from x = -6 to 0, 42 mm wide over a blade of 24 mm.
 */
class GuardedSheathTest implements AnySheath {
    private static final Knife GUARDED = TestKnives.shapes().get("guard");

    /** A sheath cut to the guard's width was 75 mm wide, with ears. */
    @Test
    void theSheathIsNoWiderForTheGuard() {
        Pattern pattern = PatternMaker.make(GUARDED, SheathSpec.standard(SheathKind.PANELS));
        double width = pattern.sizes().stream()
                .filter(size -> size.name().equals(Size.WIDTH))
                .mapToDouble(Size::lengthMm)
                .findFirst()
                .orElseThrow();
        // Blade of 25 mm, its ease, and on both sides the welt's inner margin and the stitch margin.
        assertThat(width).isCloseTo(25.5 + 2 * (0.8 + 4 + 3.2), within(1.5));
        assertThat(pattern.advice())
                .anyMatch(Advice.SeatedAtGuard.class::isInstance)
                .anyMatch(Advice.HoldsBladeAlone.class::isInstance);
    }

    /** Whole: also where it is slanted or hollowed, the throat lies before the guard on both sides. */
    @Property(tries = 60)
    void theThroatLiesWholeBeforeTheGuard(@ForAll("specs") SheathSpec spec) {
        PatternMaker.Made made;
        try {
            made = PatternMaker.madeUp(GUARDED, spec);
        } catch (Trouble refused) {
            return; // such as for its hardware; what is said of guards is tested below
        }
        assertThat(made.plan().outline().points())
                .allSatisfy(p -> assertThat(p.x()).isGreaterThan(0.5));
        assertThat(made.sections().fromMm()).isGreaterThan(0.5);
    }

    @Property(tries = 20)
    void aPouchPastTheGuardIsRefusedInWords(@ForAll @DoubleRange(min = 1, max = 80) double depthMm) {
        SheathSpec pouch = SheathSpec.standard(SheathKind.FOLDED).withHandleDepthMm(depthMm);
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, pouch))
                .isInstanceOf(Trouble.class)
                .hasMessageContaining("guard")
                .hasMessageContaining("hold nothing of the handle");
    }

    @Test
    void withoutAGuardAThirdOfTheHandleGoesIn() {
        Knife plain = TestKnives.dropPoint();
        assertThat(Depth.AS_THE_KNIFE_WANTS.throatMm(plain)).isCloseTo(-110 / 3.0, within(1e-9));
        assertThat(Depth.AS_THE_KNIFE_WANTS.throatMm(GUARDED)).isCloseTo(1, within(1e-9));
        assertThat(Depth.ofHandle(0).throatMm(GUARDED)).isCloseTo(1, within(1e-9));
        assertThat(Depth.ofHandle(0).throatMm(plain)).isZero();
    }

    /** A strap lies behind the guard. */
    @Test
    void aStrapOverTheGuardIsRefused() {
        SheathSpec spec = SheathSpec.standard(SheathKind.FOLDED)
                .withStrap(Optional.of(new HandleStrap(12, HandleStrap.Side.RIGHT, 1)));
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, spec)).hasMessageContaining("does not lie on the handle");
    }

    /** A choil of 2.6 mm on an ordinary knife is a note. */
    @Test
    void aSmallChoilIsANote() {
        Pattern pattern = PatternMaker.make(TestKnives.shapes().get("choil"), SheathSpec.standard(SheathKind.FOLDED));
        assertThat(pattern.advice())
                .filteredOn(Advice.NarrowStretch.class::isInstance)
                .allMatch(advice -> advice.severity() == Severity.NOTE
                        || ((Advice.NarrowStretch) advice).narrow().byMm() > 4);
    }
}
