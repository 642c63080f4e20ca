package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.knife.ThicknessProfile.Reading;

/**
 * Thicknesses along a knife whose blade is a plain rectangle, 100 mm long, 20 mm high and 4 mm thick, with a handle of
 * 100 mm and 16 mm. Source of the figures: linear interpolation.
 */
class ThicknessProfileTest {
    private static final Knife WEDGE = TestKnives.wedge(4, 0.4);

    @Test
    void aHandleIsStraightBetweenTwoReadings() {
        Knife knife = measured(new Reading(110, 12), new Reading(150, 16));

        assertThat(knife.sectionAt(-30).thicknessMm()).isCloseTo(14, within(1e-9));
        assertThat(knife.sectionAt(-2).thicknessMm()).as("in front of both").isCloseTo(12, within(1e-9));
        assertThat(knife.sectionAt(-90).thicknessMm()).as("behind both").isCloseTo(16, within(1e-9));
    }

    /** A sheath that is too tight cannot be used, so a thickness that nobody placed is somewhere behind. */
    @Test
    void aHandleIsAsThickAsToldBehindTheReadingsThatDoNotReachIt() {
        Knife knife = measured(new Reading(110, 12));

        assertThat(knife.sectionAt(-5).thicknessMm()).isCloseTo(12, within(1e-9));
        assertThat(knife.sectionAt(-55).thicknessMm())
                .as("half-way to the butt")
                .isCloseTo(16, within(1e-9));
        assertThat(knife.sectionAt(-95).thicknessMm()).isCloseTo(16, within(1e-9));
    }

    @Test
    void aBladeHasItsSpinesThicknessAtTheHeelAndTapersToAReading() {
        Knife knife = measured(new Reading(20, 2));

        assertThat(knife.sectionAt(0.001).thicknessMm()).isCloseTo(4, within(1e-3));
        assertThat(knife.sectionAt(40).thicknessMm()).isCloseTo(3, within(1e-9));
        assertThat(knife.sectionAt(80).thicknessMm()).isCloseTo(2, within(1e-9));
        assertThat(knife.sectionAt(95).thicknessMm()).as("nearer to the tip").isCloseTo(2, within(1e-9));
        assertThat(knife.sectionAt(-50).thicknessMm()).as("the handle").isCloseTo(16, within(1e-9));
    }

    /** In front of a reading of what the grind gives anyway, the blade runs out as it would without it. */
    @Test
    void aBladeRunsOutToItsTipAsItsGrindSays() {
        Knife drop = TestKnives.dropPoint();
        double fromTip = 25;
        double asGround = drop.sectionAt(drop.landmarks().tip().x() - fromTip).thicknessMm();
        Knife half = drop.withThickness(new ThicknessProfile(List.of(new Reading(fromTip, asGround / 2))));

        for (double x = 80; x < 95; x += 5) {
            assertThat(half.sectionAt(x).thicknessMm())
                    .as("%s mm before the heel", x)
                    .isCloseTo(Math.max(0.4, drop.sectionAt(x).thicknessMm() / 2), within(1e-9));
        }
    }

    @Test
    void everyGrindIsAsThickAsMeasured() {
        for (Grind.Kind kind : Grind.Kind.values()) {
            Knife knife = new Knife(
                    WEDGE.outline(),
                    WEDGE.landmarks(),
                    4,
                    16,
                    CrossSectionShape.usual(0.4).withGrind(new Grind(kind, 12)));
            Knife measured = knife.withThickness(new ThicknessProfile(List.of(new Reading(50, 2.6))));
            assertThat(measured.sectionAt(50).thicknessMm()).as("%s", kind).isCloseTo(2.6, within(1e-9));
        }
    }

    @Test
    void oneReadingStandsAtEachPlaceAndEightInAll() {
        List<Reading> nine =
                IntStream.range(0, 9).mapToObj(i -> new Reading(10 + 20 * i, 5)).toList();
        assertThatThrownBy(() -> new ThicknessProfile(nine))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("8");
        assertThatThrownBy(() -> new ThicknessProfile(List.of(new Reading(10, 3), new Reading(10.2, 4))))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("10.2 mm from the tip");
        ThicknessProfile one = new ThicknessProfile(List.of(new Reading(10, 3)));
        assertThat(one.with(new Reading(10.2, 4)).readings()).containsExactly(new Reading(10.2, 4));
    }

    private static Knife measured(Reading... readings) {
        return WEDGE.withThickness(new ThicknessProfile(List.of(readings)));
    }
}
