package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.knife.CrossSection;

class SectionDimensionsTest {
    private static final SheathSection CUT = new SheathSection(
            50,
            new CrossSection(
                    50, CrossSection.Part.BLADE, List.of(new Point(-10, 0), new Point(12, -1.5), new Point(12, 1.5))),
            0.5,
            List.of(new Point(-10.8, 0), new Point(12.8, -2.3), new Point(12.8, 2.3)),
            List.of(new Point(-15, 2), new Point(12, 4), new Point(18, 2)),
            List.of(new Point(-15, -2), new Point(18, -2)),
            List.of(),
            3,
            List.of(
                    new SheathSection.Layer(-18, -11, -2, 0),
                    new SheathSection.Layer(-18, -11, 0, 2),
                    new SheathSection.Layer(14, 21, -2, 2)),
            List.of(-15.0, 18.0));

    /** Each read off the section above by hand; the knife lies half a millimetre towards the face. */
    @Test
    void theSizesAreThoseThatACaliperWouldShow() {
        SectionDimensions sizes = SectionDimensions.of(CUT, -18);
        assertThat(sizes.bladeMm()).isCloseTo(3, within(1e-12));
        assertThat(sizes.heightMm()).isCloseTo(22, within(1e-12));
        assertThat(sizes.edgeToStitchMm()).isCloseTo(5, within(1e-12));
        assertThat(sizes.marginMm()).isCloseTo(3, within(1e-12));
        assertThat(sizes.weltMm()).hasValue(4);
        assertThat(sizes.sewnMm()).isCloseTo(4 + 2 * 3, within(1e-12));
        assertThat(sizes.wholeMm()).isCloseTo(4 + 2 + 2 * 3, within(1e-12));
        assertThat(sizes.airMm()).isCloseTo(4 - (1.5 + 0.5), within(1e-12));
        assertThat(sizes.faceMm()).isCloseTo(Math.hypot(27, 2) + Math.hypot(6, 2), within(1e-12));
    }

    /** Past the end of the welt there is none to measure; a layer that ends at the stitch is still sewn. */
    @Test
    void onlyTheWeltThatTheThreadGoesThroughCounts() {
        assertThat(SectionDimensions.of(with(List.of(new SheathSection.Layer(14, 21, -2, 2))), -18)
                        .weltMm())
                .isEmpty();
        assertThat(SectionDimensions.of(
                                with(List.of(
                                        new SheathSection.Layer(-18, -15, -2, 0),
                                        new SheathSection.Layer(-15, -11, 0, 1.5))),
                                -18)
                        .weltMm())
                .hasValue(3.5);
    }

    /** On the straight from (-15, 2) to (12, 4), a third and two thirds of the way; past the end, as at it. */
    @Test
    void theInsideIsReadOffBetweenItsPoints() {
        assertThat(SectionDimensions.heightAt(CUT.face(), -15)).isEqualTo(2);
        assertThat(SectionDimensions.heightAt(CUT.face(), -6)).isCloseTo(2 + 2 / 3.0, within(1e-12));
        assertThat(SectionDimensions.heightAt(CUT.face(), 3)).isCloseTo(2 + 4 / 3.0, within(1e-12));
        assertThat(SectionDimensions.heightAt(CUT.face(), 12)).isEqualTo(4);
        assertThat(SectionDimensions.heightAt(CUT.face(), 18)).isEqualTo(2);
        assertThat(SectionDimensions.heightAt(CUT.face(), 30)).isEqualTo(2);
    }

    private static SheathSection with(List<SheathSection.Layer> welt) {
        return new SheathSection(
                CUT.xMm(),
                CUT.knife(),
                CUT.knifeLiftMm(),
                CUT.room(),
                CUT.face(),
                CUT.back(),
                CUT.rivetCover(),
                CUT.leatherMm(),
                welt,
                CUT.stitches());
    }
}
