package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.image.opencv.OpenCvLibraries;

/** Eight by eight squares of 10 mm, whose area between lines is known. */
class RulingPatternTest {
    private static final double PITCH_MM = 10;
    private static final double MM_PER_PX = 0.05;
    private static final Polyline EXTENT =
            Polyline.closed(List.of(new Point(-40, -40), new Point(40, -40), new Point(40, 40), new Point(-40, 40)));

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void isPlainBetweenLinesAndNowhereElse() {
        RulingPattern ruling = new RulingPattern(PITCH_MM, Region.of(EXTENT), 0.2);
        assertThat(ruling.zoneMm()).as("a pixel's blur is added").isCloseTo(0.35, within(1e-9));
        PlaneRaster raster = PlaneRaster.covering(new Point(-45, -45), new Point(45, 45), MM_PER_PX);
        try (PrintPattern pattern = ruling.on(raster)) {
            double side = PITCH_MM - 2 * ruling.zoneMm();
            // Lines are drawn as wide as that, or wider by up to two pixels on each side.
            double least = side - 4 * MM_PER_PX;
            assertThat(Core.countNonZero(pattern.paper()) * MM_PER_PX * MM_PER_PX)
                    .isBetween(64 * least * least, 64 * side * side);
            assertThat(Core.countNonZero(pattern.black())).isZero();
            assertThat(pattern.printAt(new Point(5, 5))).isEqualTo(GroundPrint.NONE);
            assertThat(pattern.printAt(new Point(0, 3))).isEqualTo(GroundPrint.LINE);
            assertThat(pattern.printAt(new Point(-7, -20.3))).isEqualTo(GroundPrint.LINE);
            assertThat(pattern.printAt(new Point(-7, -20.5))).isEqualTo(GroundPrint.NONE);
        }
    }
}
