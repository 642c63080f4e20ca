package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** The measure itself, before anything is measured by it. */
class PulledStripTest {
    private static final double BAR_MM = 13;
    private static final double WELT_MM = 2;

    /**
     * Over half of a round bar that lies in the fold: a tangent from the pin to a circle, by Pythagoras, and the arc
     * from there to the middle of the fold. From near by the strip rises by more than 45 degrees.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-17, -20, -30, -60})
    void goesRoundABar(double stitchMm) {
        SheathSpec spec = SheathSpec.standard(SheathKind.FOLDED);
        double neutral = spec.leather().neutralFactor() * spec.leather().thicknessMm();
        List<Point> bar = new ArrayList<>();
        for (int deg = 0; deg <= 180; deg++) {
            bar.add(new Point(BAR_MM * Math.cos(Math.toRadians(deg)), BAR_MM * Math.sin(Math.toRadians(deg))));
        }
        double half = new PulledStrip(spec, WELT_MM).foldedHalfMm(bar, stitchMm, BAR_MM + spec.easeMm());

        double radius = BAR_MM + spec.easeMm() + neutral;
        double up = WELT_MM / 2 + neutral;
        double far = Math.hypot(stitchMm, up);
        double touches = Math.PI - Math.atan2(up, -stitchMm) - Math.acos(radius / far);
        assertThat(half).isCloseTo(Math.sqrt(far * far - radius * radius) + radius * touches, within(0.05));
    }
}
