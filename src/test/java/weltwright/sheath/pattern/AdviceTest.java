package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.Retention;
import weltwright.knife.CrossSection.Part;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;

class AdviceTest {

    /**
     * Common practice: a welt as thick as the blade or thicker, so that the blade does not spread the seam; less than
     * twice as thick, or the blade rattles.
     */
    @ParameterizedTest
    @CsvSource({"2, false", "2.9, false", "3, true", "5, true", "5.9, true", "6, false", "9, false"})
    void aWeltFromOnceToTwiceTheBladeIsRight(double weltMm, boolean right) {
        WeltStack welt = new WeltStack(List.of(new WeltStack.Sheets(1, weltMm)));
        Advice.WeltThickness advice = new Advice.WeltThickness(welt, 3, Optional.empty());
        assertThat(advice.severity()).isEqualTo(right ? Severity.NOTE : Severity.MIND);
        assertThat(advice.isThin()).isEqualTo(weltMm < 3);
        assertThat(advice.isThick()).isEqualTo(weltMm >= 6);
    }

    /** Three layers of 1.1 mm are 3.3 mm, though not to the last bit. */
    @Test
    void aWeltJustAsThickAsTheBladeIsNotThin() {
        WeltStack three = new WeltStack(List.of(new WeltStack.Sheets(3, 1.1)));
        assertThat(new Advice.WeltThickness(three, 3.3, Optional.empty()).isThin())
                .isFalse();
        assertThat(new Advice.WeltThickness(three, 1.65, Optional.empty()).isThick())
                .isTrue();
    }

    /** An edge that cuts the thread damages the sheath; the rest can be made, or only tells. */
    @Test
    void whatDamagesLeatherStandsAboveWhatHasADrawback() {
        assertThat(new Advice.EdgeNearStitches(2, 50, 4).severity()).isEqualTo(Severity.STOP);
        assertThat(List.of(
                        new Advice.LooseThroat(4, 2),
                        new Advice.HoldsBladeAlone(),
                        new Advice.RivetsAgainstBlade(),
                        new Advice.OpenForGuard(List.of(Side.EDGE), 20, 5),
                        new Advice.StaysWide(SheathKind.PANELS, Leather.Bulge.SHARED, 4, 0, 20)))
                .extracting(Advice::severity)
                .containsOnly(Severity.MIND);
        assertThat(List.of(
                        new Advice.HeldByStrap(),
                        new Advice.SeatedAtGuard(),
                        new Advice.WeltAllRound(),
                        new Advice.HeldByFriction(30, 30)))
                .extracting(Advice::severity)
                .containsOnly(Severity.NOTE);
    }

    /** An iron of 4 mm set with care to fit differs by 5 % at most, on the wide side as on the narrow one. */
    @ParameterizedTest
    @CsvSource({"4, 4, NOTE", "3.85, 4.15, NOTE", "3.7, 4, MIND", "4, 4.3, MIND"})
    void anIronThatCannotBeSetToFitIsToBeMinded(double leastMm, double greatestMm, Severity severity) {
        Seam.Pitch pitch = new Seam.Pitch(4, leastMm, greatestMm);
        assertThat(new Advice.PitchFitted(Seam.Kind.WELT_SEAM, pitch, 4, 40).severity())
                .isEqualTo(severity);
    }

    /** What gives as much as must pass closes again behind it. */
    @ParameterizedTest
    @CsvSource({"1.5, false", "2, false", "2.5, true"})
    void leatherStaysOpenWhereMorePassesThanItGives(double byMm, boolean open) {
        Retention.Narrow narrow = new Retention.Narrow(Part.HANDLE, -20, 0, byMm, List.of());
        assertThat(new Advice.NarrowStretch(narrow, 2, Severity.MIND).isOpen()).isEqualTo(open);
    }

    /** A length that is told in whole millimetres is told from half a millimetre on. */
    @ParameterizedTest
    @CsvSource({"0, false", "0.4, false", "0.5, true", "6, true"})
    void aBareEdgeIsOneThatIsNotZeroInWholeMillimetres(double edgeMm, boolean bare) {
        assertThat(new Advice.OpenForGuard(List.of(Side.EDGE), 20, edgeMm).isEdgeBare())
                .isEqualTo(bare);
    }

    /** A folded body has no back of its own that could take its share. */
    @ParameterizedTest
    @CsvSource({"PANELS, FACE, true", "PANELS, SHARED, false", "FOLDED, FACE, false", "FOLDED, SHARED, false"})
    void theFaceIsAloneWhereThereIsABackThatLiesFlat(SheathKind kind, Leather.Bulge bulge, boolean alone) {
        assertThat(new Advice.StaysWide(kind, bulge, 4, 0, 20).isFaceAlone()).isEqualTo(alone);
    }
}
