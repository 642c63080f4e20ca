package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.sheath.planform.ThroatCut;

class BackAreaTest {

    /** A rectangle w × h that leans by φ is w cos φ + h |sin φ| wide from its leftmost to its rightmost corner. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.5, -0.2, 0, 0.3})
    void theWidestLeaningRectangleTouchesBothSides(double leanRad) {
        BackArea area = area(leanRad, 0);
        double width = area.widthBesideMm(18);
        RigidMotion lean = new RigidMotion(leanRad, new Point(0, 0));
        double reach = 0;
        for (int along : new int[] {-1, 1}) {
            for (int across : new int[] {-1, 1}) {
                reach = Math.max(
                        reach,
                        lean.apply(new Point(along * 9, across * width / 2)).y());
            }
        }
        assertThat(2 * reach).isCloseTo(40, within(1e-9));
        assertThat(area.middleMm()).isEqualTo(-5);
    }

    @Test
    void whatLeansTurnsAboutItsPlace() {
        BackArea area = area(0.3, 0);
        Point about = new Point(20, -5);
        assertThat(area.leaning(about).apply(about).distance(about)).isCloseTo(0, within(1e-9));
        Point turned = area.leaning(about).apply(new Point(30, -5)).minus(about);
        assertThat(Math.atan2(turned.y(), turned.x())).isCloseTo(0.3, within(1e-9));
        assertThat(area.upright().leanRad()).isZero();
    }

    /**
     * A fillet is a circle that touches both lines: from where it ends on the throat, its centre lies its radius away
     * square to the throat, and from there the side of the extension is as far.
     */
    @ParameterizedTest
    @CsvSource({"0, 0, 1", "0, 0, -1", "0.25, 0, 1", "0.25, 0, -1", "0, 0.2, 1", "-0.2, 0.3, 1", "-0.2, 0.3, -1"})
    void theFilletTouchesThroatAndSide(double leanRad, double slope, int way) {
        double radius = 6;
        BackArea area = area(leanRad, slope);
        Point side = new Point(-20, way * 12);
        double footY = area.footMm(side, way, radius);
        Point foot = new Point(area.cut().atMm(footY), footY);
        Point throat = new Point(slope, 1).unit();
        Point centre = foot.plus(new Point(-throat.y(), throat.x()).times(radius));
        Point up = new RigidMotion(leanRad, new Point(0, 0)).rotate(new Point(-1, 0));

        // Beyond that side: to the right of the way up towards the spine, to its left towards the edge.
        assertThat(up.cross(centre.minus(side))).isCloseTo(-way * radius, within(1e-9));
    }

    /** A back from y = -25 to 15. */
    private static BackArea area(double leanRad, double slope) {
        ThroatCut cut = new ThroatCut(new Point(0, 0), new Point(10 * slope, 10), Double.POSITIVE_INFINITY);
        return new BackArea(0, -25, 15, 120, leanRad, cut, -30, 20);
    }
}
