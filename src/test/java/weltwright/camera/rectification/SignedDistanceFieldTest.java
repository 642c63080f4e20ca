package weltwright.camera.rectification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.opencv.OpenCvLibraries;

/** In a circle, where the depth is the radius less the distance from its middle. */
class SignedDistanceFieldTest {
    private static final Point MIDDLE = new Point(3, -2);
    private static final double RADIUS_MM = 20;
    private static final double MM_PER_PX = 0.25;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void isTheRadiusLessTheDistanceFromTheMiddle() {
        PlaneRaster raster = PlaneRaster.covering(new Point(-30, -35), new Point(35, 30), MM_PER_PX);
        SignedDistanceField depth = SignedDistanceField.of(circle(), raster);
        for (double r = 0; r < 27; r += 0.7) {
            for (double angle = 0; angle < 6.28; angle += 0.9) {
                double expected = RADIUS_MM - r;
                // A pixel for where the rim lies, and what distances over a raster are off by (Borgefors 1986).
                assertThat(depth.at(onRay(r, angle)))
                        .isCloseTo(expected, within(1.5 * MM_PER_PX + 0.02 * Math.abs(expected)));
            }
        }
    }

    @Test
    void liesFarOutsideWhereTheRasterDoesNotReach() {
        PlaneRaster raster = PlaneRaster.covering(new Point(-5, -5), new Point(5, 5), MM_PER_PX);
        assertThat(SignedDistanceField.of(circle(), raster).at(new Point(6, 0))).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    private static Polyline circle() {
        return Polyline.closed(IntStream.range(0, 720)
                .mapToObj(k -> onRay(RADIUS_MM, Math.PI * k / 360))
                .toList());
    }

    private static Point onRay(double r, double angle) {
        return MIDDLE.plus(new Point(r * Math.cos(angle), r * Math.sin(angle)));
    }
}
