package weltwright.sheath.spec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.knife.Guard;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.TestKnives;

/** The heel of the knife is at x = 0, its butt at -110. */
class InsertionDepthTest {
    private static final InsertionDepth OPENED = InsertionDepth.BY_THE_KNIFE.withGuard(GuardOpening.OPEN_SIDE);

    /** Common practice: a pouch holds a third of the handle. */
    @Test
    void withoutAGuardTheSheathHoldsAThirdOfTheHandleOrWhatIsChosen() {
        Knife knife = TestKnives.dropPoint();
        assertThat(InsertionDepth.BY_THE_KNIFE.throatMm(knife)).isCloseTo(-110 / 3.0, within(1e-9));
        assertThat(InsertionDepth.ofHandle(25).throatMm(knife)).isEqualTo(-25);
    }

    /** Common practice: a guard stands on the throat, which ends just before it. */
    @Test
    void theThroatEndsBeforeAGuard() {
        Knife knife = guarded(0, -6);
        for (InsertionDepth depth : new InsertionDepth[] {InsertionDepth.BY_THE_KNIFE, InsertionDepth.ofHandle(0)}) {
            assertThat(depth.throatMm(knife)).isBetween(0.5, 1.5);
        }
    }

    /** With a bare ricasso of 20 mm between heel and guard the sheath may take in any part of that. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 12, 18})
    void whatLiesBeforeTheGuardMayBeHeld(double depthMm) {
        assertThat(InsertionDepth.ofHandle(depthMm).throatMm(guarded(-20, -26))).isEqualTo(-depthMm);
    }

    /** A depth that the refusal names is accepted, and a millimetre more is not. */
    @Test
    void aRefusalNamesTheGreatestDepth() {
        Knife knife = guarded(-20, -26);
        assertThatThrownBy(() -> InsertionDepth.ofHandle(20).throatMm(knife))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("at most 19 mm");
        assertThat(InsertionDepth.ofHandle(19).throatMm(knife)).isEqualTo(-19);
    }

    /** With a guard 2 mm behind the heel 1 mm is left to hold; with one at the heel there is nothing. */
    @ParameterizedTest
    @CsvSource({"-2, at most 1 mm", "-1.5, nothing of the handle", "0, nothing of the handle"})
    void aRefusalSaysWhereNothingCanBeHeld(double frontMm, String words) {
        assertThatThrownBy(() -> InsertionDepth.ofHandle(30).throatMm(guarded(frontMm, frontMm - 6)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(words);
    }

    /** A third of 110 mm lies well past the guard, as does what is chosen; the sheath goes there. */
    @Test
    void anOpenSideReachesPastTheGuard() {
        Knife knife = guarded(0, -6);
        assertThat(OPENED.throatMm(knife)).isCloseTo(-110 / 3.0, within(1e-9));
        assertThat(opened(60).throatMm(knife)).isEqualTo(-60);
        assertThat(opened(0).throatMm(knife)).as("seated at its guard").isBetween(0.5, 1.5);
    }

    /** A depth that the refusal names is accepted. */
    @Test
    void anOpenSideDoesNotEndOnTheGuard() {
        Knife knife = guarded(0, -6);
        assertThatThrownBy(() -> opened(15).throatMm(knife))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("at least 16 mm");
        assertThat(opened(16).throatMm(knife)).isEqualTo(-16);
    }

    /** Of a short handle a third would end on the guard; where nothing was chosen the sheath just goes on past it. */
    @Test
    void anOpenSideIsMadeLongEnoughByItself() {
        assertThat(OPENED.throatMm(guarded(-30, -36))).isBetween(-50.0, -36.0 - 5);
    }

    private static InsertionDepth opened(double depthMm) {
        return InsertionDepth.ofHandle(depthMm).withGuard(GuardOpening.OPEN_SIDE);
    }

    private static Knife guarded(double frontMm, double backMm) {
        Knife knife = TestKnives.dropPoint();
        Landmarks at =
                knife.landmarks().withGuard(Optional.of(new Guard(new Point(frontMm, -12), new Point(backMm, -12))));
        return new Knife(knife.outline(), at, knife.spineThicknessMm(), knife.handleThicknessMm(), knife.shaping());
    }
}
