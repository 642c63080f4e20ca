package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

class CrossSectionsTest {

    @Test
    void aFullFlatGrindIsAWedge() {
        CrossSection section = TestKnives.wedge(4, 0.5).sectionAt(40);

        assertThat(section.part()).isEqualTo(CrossSection.Part.BLADE);
        // Trapezoid: height 20, parallel sides 4 and 0.5.
        assertThat(Polyline.closed(section.boundary()).signedAreaMm2()).isCloseTo(45, within(1e-9));
        assertThat(section.thicknessMm()).isEqualTo(4);
    }

    @Test
    void anEdgeWithoutThicknessMakesATriangle() {
        CrossSection section = TestKnives.wedge(4, 0).sectionAt(40);

        assertThat(section.boundary()).hasSize(3);
        assertThat(Polyline.closed(section.boundary()).signedAreaMm2()).isCloseTo(40, within(1e-9));
    }

    @Test
    void theFlatsKeepTheirAngleTowardsTheTip() {
        Knife knife = TestKnives.dropPoint();
        double heel = angle(knife.sectionAt(1));

        assertThat(angle(knife.sectionAt(95))).isCloseTo(heel, within(0.03 * heel));
    }

    @Test
    void bladeAndHandlePartAtTheHeel() {
        Knife knife = TestKnives.dropPoint();

        assertThat(knife.sectionAt(-0.01).part()).isEqualTo(CrossSection.Part.HANDLE);
        assertThat(knife.sectionAt(0.01).part()).isEqualTo(CrossSection.Part.BLADE);
        assertThat(knife.sectionAt(-40).thicknessMm()).isCloseTo(18, within(1e-9));
    }

    @Test
    void beyondTheKnifeThereIsNoSection() {
        assertThatThrownBy(() -> TestKnives.dropPoint().sectionAt(100.1)).isInstanceOf(IllegalArgumentException.class);
    }

    /**
     * Ramanujan, Quarterly Journal of Mathematics 45 (1914): π(a + b)(1 + 3h / (10 + √(4 − 3h))), h = ((a−b)/(a+b))².
     */
    @Test
    void aSuperEllipseOfExponentTwoHasTheEllipsesPerimeter() {
        double a = 14;
        double b = 9;
        double h = Math.pow((a - b) / (a + b), 2);
        double ramanujan = Math.PI * (a + b) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h)));

        List<Point> points = new SuperEllipse(a, b, 2).points(new Point(3, 0), 96);

        assertThat(Polyline.closed(points).lengthMm()).isCloseTo(ramanujan, within(0.05));
    }

    /** Area of a super-ellipse: 4ab·Γ(1 + 1/n)² / Γ(1 + 2/n); for n = 4 it is 3.708149 ab (π/2·... by tables of Γ). */
    @Test
    void aSquarerSuperEllipseHoldsTheAreaThatGammaTablesGive() {
        List<Point> points = new SuperEllipse(10, 5, 4).points(new Point(0, 0), 960);

        assertThat(Polyline.closed(points).signedAreaMm2()).isCloseTo(3.708149 * 50, within(0.05));
    }

    private static double angle(CrossSection section) {
        double height = section.boundary().stream().mapToDouble(Point::x).max().orElseThrow()
                - section.boundary().stream().mapToDouble(Point::x).min().orElseThrow();
        return (section.thicknessMm() - 0.4) / height;
    }
}
