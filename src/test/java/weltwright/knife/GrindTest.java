package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import weltwright.geometry.Polyline;

/** Sections of a blade 20 mm high and 4 mm thick, against the areas and heights of school geometry. */
class GrindTest {

    @Test
    void aPartialFlatGrindIsATrapezoidAndARectangle() {
        CrossSection section = section(new Grind(Grind.Kind.PARTIAL_FLAT, 12), 0.4);

        assertThat(area(section)).isCloseTo((0.4 + 4) / 2 * 12 + 4 * 8, within(1e-9));
        assertThat(thicknessAt(section, 12)).isCloseTo(4, within(1e-9));
    }

    /** No thickness is left behind the edge, whatever was measured there. */
    @Test
    void aShortBevelRunsOutToNothing() {
        CrossSection section = section(new Grind(Grind.Kind.SHORT_BEVEL, 5), 0.4);

        assertThat(area(section)).isCloseTo(4.0 / 2 * 5 + 4 * 15, within(1e-9));
    }

    /** Under a parabola y = x² lies a third of its box. */
    @Test
    void aHollowGrindHasAThirdOfTheSteelOfItsBox() {
        CrossSection section = section(new Grind(Grind.Kind.HOLLOW, 12), 0);

        assertThat(area(section)).isCloseTo(4.0 * 12 / 3 + 4 * 8, within(0.1));
        assertThat(section.boundary()).doesNotHaveDuplicates();
    }

    @Test
    void aDoubleEdgedBladeIsADiamond() {
        CrossSection section = section(Grind.DOUBLE_EDGED, 0);

        assertThat(area(section)).isCloseTo(4.0 * 20 / 2, within(1e-9));
        assertThat(section.thicknessMm()).isCloseTo(4, within(1e-9));
        assertThat(section.boundary()).hasSize(4);
    }

    /** Squareness 2 is an ellipse: π·a·b. */
    @Test
    void aHandleOfSquarenessTwoIsAnEllipse() {
        Knife wedge = TestKnives.wedge(4, 0.4);
        Knife round = new Knife(
                wedge.outline(),
                wedge.landmarks(),
                4,
                16,
                CrossSectionShape.usual(0.4).withHandleExponent(2));

        assertThat(area(round.sectionAt(-40))).isCloseTo(Math.PI * 10 * 8, within(0.5));
    }

    private static CrossSection section(Grind grind, double edge) {
        Knife wedge = TestKnives.wedge(4, edge);
        return new Knife(
                        wedge.outline(),
                        wedge.landmarks(),
                        4,
                        16,
                        CrossSectionShape.usual(edge).withGrind(grind))
                .sectionAt(50);
    }

    private static double area(CrossSection section) {
        return Polyline.closed(section.boundary()).signedAreaMm2();
    }

    private static double thicknessAt(CrossSection section, double aboveEdge) {
        double[] z = Polyline.closed(section.boundary()).crossings(section.edgeMm() + aboveEdge - 1e-9);
        return z[z.length - 1] - z[0];
    }
}
