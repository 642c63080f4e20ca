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
}
