package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.SuperEllipse;

class LeatherWrapTest {
    private static final double NEUTRAL = 1.5;

    /** A slab as thick as its welt: straight up its face, round half its back, and a quarter turn at each corner. */
    @Test
    void foldsRoundASlab() {
        LeatherWrap wrap = LeatherWrap.folded(new Point(-20, 3), 10, box(-10, 10, 3), NEUTRAL);

        assertThat(wrap.flatMm()).isCloseTo(30 + 3 + NEUTRAL * Math.PI / 2, within(1e-9));
    }

    /**
     * A round bar that lies against the fold: the face of the welt runs on to the top of it, then a quarter of its
     * girth.
     */
    @Test
    void foldsRoundABar() {
        LeatherWrap wrap = LeatherWrap.folded(
                new Point(-20, 5), 5, ConvexHull.of(new SuperEllipse(5, 5, 2).points(new Point(0, 0), 720)), NEUTRAL);

        assertThat(wrap.flatMm()).isCloseTo(20 + Math.PI / 2 * (5 + NEUTRAL), within(0.001));
    }

    /**
     * A wedge with its point at the stitch. The stitch pins the fibre 1.5 mm above the wedge's point, so it runs 24 mm,
     * as long as the wedge is wide, to where it touches a circle of 1.5 mm about the spine's corner: both are as far
     * from that corner's level as the other. There it has risen at twice the angle of 1.5 in 24; it turns down, and
     * half the back is left.
     */
    @Test
    void foldsRoundAWedge() {
        ConvexHull wedge = ConvexHull.of(List.of(new Point(0, 0), new Point(24, -3), new Point(24, 3)));
        LeatherWrap wrap = LeatherWrap.folded(new Point(0, 0), 24, wedge, NEUTRAL);
        double turn = Math.PI / 2 + 2 * Math.atan(NEUTRAL / 24);
        assertThat(wrap.flatMm()).isCloseTo(24 + NEUTRAL * turn + 3, within(1e-9));
    }

    @Test
    void aPanelOverAThinnerBladeIsFlat() {
        LeatherWrap wrap = LeatherWrap.panel(new Point(-15, 3), new Point(15, 3), box(-10, 10, 2), NEUTRAL);

        assertThat(wrap.flatMm()).isEqualTo(30);
        assertThat(wrap.growthOnEdgeSideMm(0)).isZero();
        assertThat(wrap.growthOnSpineSideMm(0)).isZero();
    }

    /**
     * A blade as high as the welt, as its sections come out: each top as high as the other but for the last bit. It is
     * grazed, and nothing is added, for the shortest way between two points is straight.
     */
    @Property
    void aPanelOverABladeAsThickAsTheWeltIsFlat(
            @ForAll @Size(min = 2, max = 12) List<@DoubleRange(min = -10, max = 10) Double> tops,
            @ForAll @DoubleRange(min = 0.3, max = 2) double ease,
            @ForAll @DoubleRange(min = 0.6, max = 2.8) double neutral) {
        double half = 2 + ease;
        List<Point> blade = new ArrayList<>(List.of(new Point(-11, -half), new Point(11, -half)));
        for (int i = 0; i < tops.size(); i++) {
            blade.add(new Point(tops.get(i), half + (i % 3 - 1) * Math.ulp(half)));
        }
        LeatherWrap wrap = LeatherWrap.panel(new Point(-16, half), new Point(17, half), ConvexHull.of(blade), neutral);

        assertThat(wrap.flatMm()).isCloseTo(33, within(1e-9));
        assertThat(wrap.growthOnEdgeSideMm(0)).isCloseTo(0, within(1e-9));
        assertThat(wrap.growthOnSpineSideMm(0)).isCloseTo(0, within(1e-9));
    }

    /**
     * A strip that is to be 30 mm long once it has drawn together by a tenth is cut 30 / 0.9 mm long, whatever it
     * touches.
     */
    @ParameterizedTest
    @ValueSource(doubles = {2, 3 - 1e-9, 3 + 1e-9})
    void whatWetLeatherDrawsTogetherIsAddedOnBothSidesAlike(double halfBlade) {
        LeatherWrap wrap = LeatherWrap.panel(new Point(-15, 3), new Point(15, 3), box(-12, 4, halfBlade), NEUTRAL);
        assertThat(wrap.growthOnEdgeSideMm(0.1)).isCloseTo((30 / 0.9 - 30) / 2, within(1e-4));
        assertThat(wrap.growthOnSpineSideMm(0.1)).isCloseTo((30 / 0.9 - 30) / 2, within(1e-4));
    }

    /**
     * Over a slab that stands 3.5 mm higher than the welt, 2 mm from each stitch. From the pin, 1.5 mm above the welt,
     * its corner is 2 mm up and 2 mm on; so the fibre runs √(8 - 1.5²) to the circle of 1.5 mm about it, and turns
     * level from 45° and the angle whose sine is 1.5 in √8.
     */
    @Test
    void aPanelSharesItsBulge() {
        LeatherWrap wrap = LeatherWrap.panel(new Point(-12, 3), new Point(12, 3), box(-10, 10, 6.5), NEUTRAL);
        double side = Math.sqrt(8 - 2.25) + NEUTRAL * (Math.PI / 4 + Math.asin(NEUTRAL / Math.sqrt(8)));
        assertThat(wrap.flatMm()).isCloseTo(20 + 2 * side, within(1e-9));
        assertThat(wrap.growthOnEdgeSideMm(0)).isCloseTo(side - 2, within(1e-9));
        assertThat(wrap.growthOnSpineSideMm(0)).isCloseTo(side - 2, within(1e-9));
    }

    /** From a welt down to a flat back, with nothing in the way: Pythagoras, and all of it on the falling side. */
    @Test
    void aStripThatOnlyFallsIsStraight() {
        LeatherWrap wrap = LeatherWrap.panel(new Point(-12, 3), new Point(12, -3), box(-10, -6, 1), NEUTRAL);
        assertThat(wrap.flatMm()).isCloseTo(Math.hypot(24, 6), within(1e-9));
        assertThat(wrap.growthOnEdgeSideMm(0)).isZero();
        assertThat(wrap.growthOnSpineSideMm(0)).isCloseTo(Math.hypot(24, 6) - 24, within(1e-9));
    }

    /** From a flat back up to a welt: the same seen in a mirror, and all of it on the rising side. */
    @Test
    void aStripThatOnlyRisesIsStraight() {
        LeatherWrap wrap = LeatherWrap.panel(new Point(-12, -3), new Point(12, 3), box(6, 10, 1), NEUTRAL);
        assertThat(wrap.flatMm()).isCloseTo(Math.hypot(24, 6), within(1e-9));
        assertThat(wrap.growthOnEdgeSideMm(0)).isCloseTo(Math.hypot(24, 6) - 24, within(1e-9));
        assertThat(wrap.growthOnSpineSideMm(0)).isZero();
    }

    /**
     * Seen in a mirror a strip is as long, and what it rises it falls. Its two ends may lie at different heights, so
     * that it rises or falls all along.
     */
    @Property(tries = 300)
    void aMirrorSwapsTheTwoSides(
            @ForAll @DoubleRange(min = -6, max = 6) double left,
            @ForAll @DoubleRange(min = -6, max = 6) double right,
            @ForAll @Size(min = 4, max = 8) List<@DoubleRange(min = -10, max = 10) Double> values) {
        List<Point> over = new ArrayList<>(List.of(new Point(-8, -6), new Point(7, -6)));
        for (int i = 0; i + 1 < values.size(); i += 2) {
            over.add(new Point(values.get(i), values.get(i + 1)));
        }
        List<Point> mirrored = over.stream().map(p -> new Point(-p.x(), p.y())).toList();
        LeatherWrap wrap = LeatherWrap.panel(new Point(-14, left), new Point(15, right), ConvexHull.of(over), NEUTRAL);
        LeatherWrap other =
                LeatherWrap.panel(new Point(-15, right), new Point(14, left), ConvexHull.of(mirrored), NEUTRAL);

        assertThat(other.flatMm()).isCloseTo(wrap.flatMm(), within(1e-9));
        assertThat(wrap.growthOnEdgeSideMm(0) + wrap.growthOnSpineSideMm(0))
                .isCloseTo(wrap.flatMm() - 29, within(1e-9));
        // Where the strip lies level on top of several points, any of them may be the ridge.
        if (wrap.fibre().risingMm() > 0 && wrap.fibre().fallingMm() > 0) {
            assertThat(other.growthOnSpineSideMm(0)).isCloseTo(wrap.growthOnEdgeSideMm(0), within(1e-6));
        }
    }

    /** Against a chain of links that is pulled tight over handle and welt, to the accuracy of its links. */
    @Test
    void aPanelOverAHandleIsAsLongAsAStripPulledTight() {
        List<Point> handle = new SuperEllipse(12, 9, 2.5).points(new Point(0, 0), 2000);
        LeatherWrap wrap = LeatherWrap.panel(new Point(-19, 3), new Point(19, 3), ConvexHull.of(handle), NEUTRAL);

        double strip = TautStrip.lengthMm(new Point(-19, 3 + NEUTRAL), new Point(19, 3 + NEUTRAL), handle, NEUTRAL);

        assertThat(wrap.flatMm()).isCloseTo(strip, within(0.05));
    }

    /**
     * The same round a fold. The strip is laid over the half of the section that faces up, and over the round of the
     * fold itself as far as it faces up; from there to the middle of the fold it goes round the spine's corner.
     */
    @Test
    void aFoldRoundABladeIsAsLongAsAStripPulledTight() {
        double spine = 1.75;
        List<Point> blade = new ArrayList<>(Polyline.open(List.of(new Point(-14, 0.2), new Point(12, spine)))
                .resampled(0.02)
                .points());
        blade.addAll(Polyline.open(List.of(new Point(-23, 3), new Point(-15, 3)))
                .resampled(0.02)
                .points());
        ConvexHull section = ConvexHull.of(
                List.of(new Point(-14, -0.2), new Point(12, -spine), new Point(12, spine), new Point(-14, 0.2)));
        LeatherWrap wrap = LeatherWrap.folded(new Point(-19, 3), 12, section, NEUTRAL);

        // The fibre passes right over the spine's corner and goes on as a quarter circle about it, then down half the
        // spine.
        double strip = TautStrip.lengthMm(new Point(-19, 3 + NEUTRAL), new Point(12, spine + NEUTRAL), blade, NEUTRAL)
                + Math.PI / 2 * NEUTRAL
                + spine;

        assertThat(wrap.flatMm()).isCloseTo(strip, within(0.05));
    }

    private static ConvexHull box(double from, double to, double half) {
        return ConvexHull.of(
                List.of(new Point(from, -half), new Point(to, -half), new Point(to, half), new Point(from, half)));
    }
}
