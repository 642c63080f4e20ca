package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;

/**
 * Leather closed round a knife's own sections, as fine as the program has them, against closed forms. Ease and K ·
 * thickness together lie a distance d outside the section, and so add 2πd (Steiner's formula).
 */
class SectionFitTest {
    private static final double EASE = 0.8;
    private static final double NEUTRAL = 1.5;
    private static final double AROUND = 2 * Math.PI * (EASE + NEUTRAL);
    private static final double AGREES = 0.05;

    /** The length of the neutral fibre once round the section at a station. */
    private static double round(Knife knife, double xMm) {
        return ConvexHull.of(knife.sections().at(xMm).boundary()).grown(EASE).parallelLengthMm(NEUTRAL);
    }

    @ParameterizedTest
    @CsvSource({"16", "20", "25"})
    void aCircle(double diameterMm) {
        assertThat(round(handle(diameterMm, diameterMm, 2), -50))
                .isCloseTo(Math.PI * diameterMm + AROUND, within(AGREES));
    }

    /**
     * Ramanujan's second approximation of the perimeter of an ellipse: π (a + b) (1 + 3h / (10 + √(4 - 3h))), h = ((a -
     * b) / (a + b))². Modular equations and approximations to π, Quarterly Journal of Mathematics 45, 1914.
     */
    @ParameterizedTest
    @CsvSource({"24, 18", "30, 20", "28, 10", "36, 12"})
    void anEllipse(double widthMm, double thicknessMm) {
        double a = widthMm / 2;
        double b = thicknessMm / 2;
        double h = Math.pow((a - b) / (a + b), 2);
        double ramanujan = Math.PI * (a + b) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h)));
        assertThat(round(handle(widthMm, thicknessMm, 2), -50)).isCloseTo(ramanujan + AROUND, within(AGREES));
        assertThat(alongLame(a, b, 2)).as("and by summing up").isCloseTo(ramanujan, within(1e-3));
    }

    /** Lamé's curve has no closed form: summed up in a hundred thousand steps. */
    @ParameterizedTest
    @CsvSource({"24, 18, 2.5", "26, 12, 4"})
    void aRoundedSlab(double widthMm, double thicknessMm, double exponent) {
        assertThat(round(handle(widthMm, thicknessMm, exponent), -50))
                .isCloseTo(alongLame(widthMm / 2, thicknessMm / 2, exponent) + AROUND, within(AGREES));
    }

    private static double alongLame(double a, double b, double exponent) {
        double sum = 0;
        Point last = new Point(a, 0);
        for (int i = 1; i <= 100_000; i++) {
            double t = Math.PI / 2 * i / 100_000;
            Point next = new Point(a * Math.pow(Math.cos(t), 2 / exponent), b * Math.pow(Math.sin(t), 2 / exponent));
            sum += next.distance(last);
            last = next;
        }
        return 4 * sum;
    }

    /** A blade as thick at its edge as at its spine is a rectangle. */
    @Test
    void aRectangle() {
        assertThat(round(blade(24, 4, 4), 50)).isCloseTo(2 * (24 + 4) + AROUND, within(AGREES));
    }

    /** A full flat grind is a wedge: two sides by Pythagoras, the back, and what is left of thickness at the edge. */
    @ParameterizedTest
    @CsvSource({"30, 4, 0.4", "22, 6, 0", "45, 3, 0.6"})
    void aWedge(double heightMm, double spineMm, double edgeMm) {
        double side = Math.hypot(heightMm, (spineMm - edgeMm) / 2);
        assertThat(round(blade(heightMm, spineMm, edgeMm), 50))
                .isCloseTo(2 * side + spineMm + edgeMm + AROUND, within(AGREES));
    }

    /**
     * Half a body round a circle that the fold lies against, the stitch on a welt as thick as the circle: straight on
     * from the stitch to the top, and a quarter of the circle that runs d outside of it.
     */
    @Test
    void aFoldRoundACircle() {
        ConvexHull bar =
                ConvexHull.of(handle(20, 20, 2).sections().at(-50).boundary()).grown(EASE);
        LeatherWrap wrap = LeatherWrap.folded(new Point(-25, 10 + EASE), 10 + EASE, bar, NEUTRAL);
        assertThat(wrap.flatMm()).isCloseTo(25 + Math.PI / 2 * (10 + EASE + NEUTRAL), within(AGREES));
    }

    /**
     * A panel over a circle, from stitches level with its middle: tangents from the two pins to the circle that runs d
     * outside of it, and the arc between them. With the pins NEUTRAL above the middle and 20 mm to either side, each
     * tangent rises at atan(-1.5/20) + asin(r/√(20² + 1.5²)).
     */
    @Test
    void aPanelOverACircle() {
        double r = 8 + EASE + NEUTRAL;
        double off = Math.hypot(20, NEUTRAL);
        double rise = Math.asin(r / off) - Math.atan(NEUTRAL / 20);
        ConvexHull bar =
                ConvexHull.of(handle(16, 16, 2).sections().at(-50).boundary()).grown(EASE);
        LeatherWrap wrap = LeatherWrap.panel(new Point(-20, 0), new Point(20, 0), bar, NEUTRAL);
        assertThat(wrap.flatMm()).isCloseTo(2 * (Math.sqrt(off * off - r * r) + r * rise), within(AGREES));
    }

    private static Knife handle(double widthMm, double thicknessMm, double exponent) {
        return box(widthMm, 3, thicknessMm, CrossSectionShape.usual(0.4).withHandleExponent(exponent));
    }

    private static Knife blade(double heightMm, double spineMm, double edgeMm) {
        return box(heightMm, spineMm, 16, CrossSectionShape.usual(edgeMm));
    }

    /** From butt to tip as wide as said. */
    private static Knife box(double widthMm, double spineMm, double handleMm, CrossSectionShape shaping) {
        double half = widthMm / 2;
        Outline box = Outline.polygon(
                List.of(new Point(-100, -half), new Point(100, -half), new Point(100, half), new Point(-100, half)));
        Landmarks at =
                new Landmarks(new Point(100, half), new Point(0, -half), new Point(0, half), new Point(-100, -half));
        return new Knife(box, at, spineMm, handleMm, shaping);
    }
}
