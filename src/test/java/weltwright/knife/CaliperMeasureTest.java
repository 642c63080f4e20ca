package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;

/** An invented knife: blade of 120 mm from heel (0) to tip, 24 wide at its widest, handle of 110 mm. */
class CaliperMeasureTest {
    private static final Silhouette KNIFE = new Silhouette(
            new Outline(List.of(
                    sharp(120, 4),
                    smooth(112, 6.6),
                    smooth(100, 9.1),
                    smooth(80, 11.2),
                    smooth(60, 12),
                    smooth(40, 12.2),
                    smooth(20, 12.1),
                    sharp(0, 12),
                    smooth(-25, 11.2),
                    smooth(-50, 11),
                    smooth(-75, 11.8),
                    smooth(-100, 12),
                    smooth(-108, 8),
                    smooth(-110, 0),
                    smooth(-108, -8),
                    smooth(-100, -12),
                    smooth(-75, -11),
                    smooth(-50, -10),
                    smooth(-25, -10.6),
                    sharp(0, -13),
                    smooth(20, -13),
                    smooth(40, -12.5),
                    smooth(60, -11.2),
                    smooth(80, -8.8),
                    smooth(100, -4.8),
                    smooth(112, -0.8))),
            new Landmarks(new Point(120, 4), new Point(0, -13), new Point(0, 12), new Point(-110, 0)),
            true);

    private static OutlineNode sharp(double x, double y) {
        return new OutlineNode(new Point(x, y), true);
    }

    private static OutlineNode smooth(double x, double y) {
        return new OutlineNode(new Point(x, y), false);
    }

    private static double width(Silhouette s, double x) {
        double[] ys = s.outline().sampled(0.1).crossings(x);
        return ys[ys.length - 1] - ys[0];
    }

    @Property(tries = 50)
    void theBladeIsAsLongAsMeasuredAndTheHandleStaysToTheLastBit(@ForAll @DoubleRange(min = 113, max = 127) double mm) {
        Silhouette bent = CaliperMeasure.bentTo(KNIFE, List.of(CaliperMeasure.bladeLength(mm, KNIFE)));
        assertThat(bent.bladeLengthMm()).isCloseTo(mm, within(1e-6));
        assertThat(handle(bent)).isEqualTo(handle(KNIFE));
        assertThat(bent.landmarks().heel()).isEqualTo(KNIFE.landmarks().heel());
        assertThat(sharpness(bent)).isEqualTo(sharpness(KNIFE));
        // The tip keeps its shape: a little before it, the blade is as wide as it was there.
        assertThat(width(bent, mm - 4)).isCloseTo(width(KNIFE, 116), within(0.08));
    }

    @Property(tries = 25)
    void theKnifeIsAsWideAsMeasuredAndFarPartsStay(
            @ForAll @DoubleRange(min = 20, max = 100) double fromTip,
            @ForAll @DoubleRange(min = -1, max = 1) double more) {
        double x = 120 - fromTip;
        double mm = width(KNIFE, x) + more;
        Silhouette bent = CaliperMeasure.bentTo(KNIFE, List.of(CaliperMeasure.width(fromTip, mm, KNIFE)));
        assertThat(width(bent, x)).isCloseTo(mm, within(1e-6));
        assertThat(bent.bladeLengthMm()).isCloseTo(120, within(1e-6));
        assertThat(bent.outline().nodes().stream().filter(OutlineNode::sharp).toList())
                .isEqualTo(KNIFE.outline().nodes().stream()
                        .filter(OutlineNode::sharp)
                        .toList());
        assertThat(bent.outline().sampled(0.2).polygon().isValid()).isTrue();
        // A curve of few nodes lets a change of 1 mm be felt by less than a tenth of it beyond its reach.
        for (double far = -100; far < 116; far += 4) {
            if (Math.abs(far - x) > 25) {
                assertThat(width(bent, far)).as("at %f", far).isCloseTo(width(KNIFE, far), within(0.1));
            }
        }
    }

    @Test
    void allMeasuresHoldAtOnce() {
        List<CaliperMeasure> all = List.of(
                CaliperMeasure.width(60, 25.2, KNIFE),
                CaliperMeasure.bladeLength(121.3, KNIFE),
                CaliperMeasure.width(45, 22.4, KNIFE),
                CaliperMeasure.width(170, 22, KNIFE));
        Silhouette bent = CaliperMeasure.bentTo(KNIFE, all);
        for (CaliperMeasure one : all) {
            assertThat(one.on(bent)).as("%s", one).isCloseTo(one.mm(), within(1e-6));
        }
        assertThat(CaliperMeasure.bentTo(bent, all)).isEqualTo(bent);
    }

    @Test
    void withoutTheMeasureTheOutlineIsAsItWas() {
        CaliperMeasure length = CaliperMeasure.bladeLength(121, KNIFE);
        Silhouette longer = CaliperMeasure.bentTo(KNIFE, List.of(length));
        List<CaliperMeasure> all = List.of(length, CaliperMeasure.width(60, 25.4, longer));
        Silhouette bent = CaliperMeasure.bentTo(longer, all);
        Silhouette back =
                CaliperMeasure.released(CaliperMeasure.released(bent, all.get(1), all), all.get(0), all.subList(0, 1));
        assertThat(back.bladeLengthMm()).isCloseTo(120, within(1e-6));
        for (double x = -100; x < 118; x += 3) {
            assertThat(width(back, x)).as("at %f", x).isCloseTo(width(KNIFE, x), within(0.1));
        }
    }

    @Test
    void whatTheOutlineCannotBeBentToIsRefused() {
        assertThatThrownBy(() -> CaliperMeasure.bladeLength(140, KNIFE))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("120 mm")
                .hasMessageContaining("140 mm");
        assertThatThrownBy(() -> CaliperMeasure.width(300, 20, KNIFE))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("between tip and butt");
    }

    private static List<OutlineNode> handle(Silhouette s) {
        return s.outline().nodes().stream().filter(n -> n.at().x() <= 0).toList();
    }

    private static List<Boolean> sharpness(Silhouette s) {
        return s.outline().nodes().stream().map(OutlineNode::sharp).toList();
    }
}
