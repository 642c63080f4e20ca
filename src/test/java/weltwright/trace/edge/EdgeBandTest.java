package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Bands round a circle and along a line, whose normals are known. */
class EdgeBandTest {
    private static final Point MIDDLE = new Point(50, 40);
    private static final double RADIUS_PX = 30;
    private static final int HALF = 6;
    private static final double PER_PX = 2;

    /** Six places at two to the pixel are three pixels. */
    @Test
    void reachesFromInsideToOutsideWhicheverWayRoundItGoes() {
        Polyline circle = Polyline.closed(IntStream.range(0, 90)
                .mapToObj(i -> Math.toRadians(4 * i))
                .map(a -> MIDDLE.plus(new Point(RADIUS_PX * Math.cos(a), RADIUS_PX * Math.sin(a))))
                .toList());
        for (Polyline round : new Polyline[] {circle, circle.reversed()}) {
            EdgeBand band = EdgeBand.along(round, HALF, PER_PX);
            for (int row = 0; row < band.rows(); row++) {
                assertThat(band.innermost(row).distance(MIDDLE)).isCloseTo(RADIUS_PX - 3, within(1e-9));
                assertThat(band.outermost(row).distance(MIDDLE)).isCloseTo(RADIUS_PX + 3, within(1e-9));
                assertThat(band.innermost(row)
                                .plus(band.step(row).times(2 * HALF))
                                .distance(band.outermost(row)))
                        .isLessThan(1e-9);
            }
        }
    }

    /** Pixels count downwards: of a line drawn to the right, the left as it is seen is above, at lesser y. */
    @Test
    void hasTheKnifeOnTheLeftOfAStretchAsItIsSeen() {
        EdgeBand band = EdgeBand.along(
                Polyline.open(IntStream.range(0, 9)
                        .mapToObj(i -> new Point(10 + i, 20))
                        .toList()),
                HALF,
                PER_PX);

        for (int row = 0; row < band.rows(); row++) {
            assertThat(band.innermost(row).distance(new Point(10 + row, 17))).isLessThan(1e-9);
            assertThat(band.outermost(row).distance(new Point(10 + row, 23))).isLessThan(1e-9);
        }
    }
}
