package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** On drawn knives whose lower side is a formula, the handle's end where it has its corner: x = 100. */
class HandleCornerTest {
    private static final double CORNER_X = 100;

    /**
     * A line that is off by its standard deviation is drawn to a corner of 40 degrees, to within what it then claims.
     */
    @Test
    void findsTheCornerThoughTheLineIsOff() {
        OutlineSides sides = sides(x -> -12 - Math.tan(Math.toRadians(20)) * Math.abs(x - CORNER_X), 0.03);
        for (double off : new double[] {-0.4, 0, 0.4}) {
            HandleCorner corner = HandleCorner.find(sides, false, end(CORNER_X + off, 0, 0.4));
            assertThat(corner.x()).isCloseTo(CORNER_X, within(Math.max(0.25, 0.75 * Math.abs(off))));
            assertThat(Math.abs(corner.x() - CORNER_X)).isLessThan(2 * corner.sigmaMm());
            assertThat(corner.sigmaMm()).isLessThan(0.4);
        }
    }

    /** Where a side runs straight through, only the line tells, and it is no surer than the line. */
    @Test
    void keepsToTheLineWhereTheSideRunsThrough() {
        OutlineSides sides = sides(x -> -12 - 0.02 * (x - CORNER_X), 0);
        HandleCorner corner = HandleCorner.find(sides, false, end(CORNER_X, 0.05, 0.3));
        assertThat(corner.x()).isCloseTo(CORNER_X - 12 * 0.05, within(0.1));
        assertThat(corner.sigmaMm()).isBetween(0.2, 0.6);
    }

    /**
     * A handle that ends 0.8 mm farther to the tip than its mid-plane does, and a thin blade that begins there, show a
     * corner between the two. A line that is sure to 0.3 mm is not drawn to it as if it lay in the mid-plane.
     */
    @Test
    void allowsForWhereTheRimOfAThickHandleEnds() {
        OutlineSides sides = sides(x -> -12 - Math.tan(Math.toRadians(30)) * Math.abs(x - CORNER_X), 0.03);
        HandleEndLine.Rim rim = new HandleEndLine.Rim(0.9, 0.1, 2, -0.8, 0.8, 0.1);
        HandleCorner corner = HandleCorner.find(sides, false, new HandleEndLine(CORNER_X - 0.4, 0, 0.01, 0.3, rim));
        assertThat(corner.x()).isCloseTo(CORNER_X - 0.4, within(0.1));
        assertThat(corner.sigmaMm()).isBetween(0.15, 0.3);
        assertThat(HandleCorner.find(sides, false, end(CORNER_X - 0.4, 0, 0.3)).x())
                .as("of a thin handle")
                .isCloseTo(CORNER_X, within(0.2));
    }

    /** A step of half a millimetre between curved sides is found, on either hand; a kink of 17 degrees is none. */
    @Test
    void tellsALowStepFromAKink() {
        for (double height : new double[] {-0.5, 0.5}) {
            OutlineSides stepped =
                    sides(x -> -12 - 0.004 * Math.pow(x - CORNER_X, 2) - (x > CORNER_X ? height : 0), 0.03);
            HandleCorner.Jump jump = HandleCorner.find(stepped, false, end(CORNER_X + 0.2, 0, 0.3))
                    .jump()
                    .orElseThrow();
            assertThat(jump.x()).isCloseTo(CORNER_X, within(0.25));
            assertThat(jump.bladeMm() - jump.handleMm()).isCloseTo(height, within(0.1));
        }
        OutlineSides kinked = sides(x -> -12 - 0.15 * Math.abs(x - CORNER_X), 0.03);
        assertThat(HandleCorner.find(kinked, false, end(CORNER_X + 0.2, 0, 0.3)).jump())
                .isEmpty();
    }

    private static HandleEndLine end(double x, double slope, double sigma) {
        return new HandleEndLine(x, slope, 0.01, sigma, HandleEndLine.Rim.NONE);
    }

    private static OutlineSides sides(DoubleUnaryOperator lower, double noise) {
        Random random = new Random(1);
        List<Point> points = new ArrayList<>();
        for (double x = 0; x <= 200; x += 0.16) {
            points.add(new Point(x, lower.applyAsDouble(x) + noise * random.nextGaussian()));
        }
        for (double x = 200; x >= 0; x -= 0.16) {
            points.add(new Point(x, 12));
        }
        return new OutlineSides(Polyline.closed(points));
    }
}
