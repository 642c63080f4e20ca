package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.HandleEndLine;
import weltwright.knife.HandleSection;
import weltwright.knife.OutlineSides;
import weltwright.knife.ThicknessProfile;

/**
 * A strip across a knife made up of two colours, with the boundary between them known: a straight line, or the curve at
 * which the rim of a thick front is seen. A pixel that the boundary crosses has of each colour what lies on its side;
 * then blur, and noise.
 */
class HandleFrontLineTest {
    private static final double HALF_WIDTH_MM = 12;
    private static final double HANDLE_MM = 20;
    private static final ThicknessParallax KNIFE =
            new ThicknessParallax(3, 0.3, HANDLE_MM, ThicknessProfile.NONE, HandleSection.OVAL, false);
    private static final double[] WOOD = {60, 90, 140};
    private static final double[] STEEL = {150, 150, 150};
    private static final Point FROM_ABOVE = new Point(0, 0);

    /** In grey levels, after the blur, and independent from pixel to pixel: more than a good photo has. */
    private static final double NOISE = 6;

    private final OutlineSides sides = new OutlineSides(Polyline.closed(List.of(
            new Point(-60, -HALF_WIDTH_MM),
            new Point(60, -HALF_WIDTH_MM),
            new Point(60, HALF_WIDTH_MM),
            new Point(-60, HALF_WIDTH_MM))));

    /** Where the boundary is at each height. */
    private interface Boundary {
        double at(double y);
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "0.37, 2", "-1.9, -3", "2.6, 5", "1.13, -6.5"})
    void findsAStraightLine(double x, double slantDegrees) {
        double slope = Math.tan(Math.toRadians(slantDegrees));
        HandleEndLine end = find(FROM_ABOVE, WOOD, STEEL, y -> x + slope * y);
        assertThat(end.at(0)).isCloseTo(x, within(0.05));
        assertThat(end.slope()).isCloseTo(slope, within(Math.toRadians(0.2)));
        assertThat(end.sigmaMm()).isLessThan(0.2);
    }

    /** However the two differ: a pale handle, one as bright as the blade but of another hue, one hardly darker. */
    @ParameterizedTest
    @CsvSource({"170, 200, 215", "200, 150, 110", "125, 125, 125"})
    void findsItByAnyDifference(double blue, double green, double red) {
        HandleEndLine end = find(FROM_ABOVE, new double[] {blue, green, red}, STEEL, y -> 0.8);
        assertThat(end.at(0)).isCloseTo(0.8, within(0.1));
    }

    /**
     * A rim at height z over the mid-plane is seen z times the lean farther towards the tip; a front whose section is
     * the superellipse |2z/T|^n + |y/w|^n = 1 is T/2 (1 − |y/w|^n)^(1/n) high. The line is told where it meets the
     * outline, where that is nothing. The program takes n for 2.5; a section a little rounder or squarer must lie
     * within what it claims.
     */
    @ParameterizedTest
    @CsvSource({"2.5, 0.05", "2.35, 0.3", "2.65, 0.3"})
    void takesTheBowOffThatATiltedCameraMakes(double n, double withinMm) {
        double lean = -0.25;
        double rimMm = 0.8 * HANDLE_MM / 2;
        HandleEndLine end = find(new Point(lean, 0), WOOD, STEEL, y -> {
            double beside = Math.min(1, Math.abs(y) / HALF_WIDTH_MM);
            return 0.5 - lean * rimMm * Math.pow(1 - Math.pow(beside, n), 1 / n);
        });
        assertThat(end.bowMm()).isCloseTo(0.25 * HANDLE_MM / 2, within(1e-9));
        assertThat(end.at(HALF_WIDTH_MM)).isCloseTo(0.5, within(Math.min(withinMm, 1.96 * end.sigmaMm())));
        assertThat(end.at(-HALF_WIDTH_MM)).isCloseTo(0.5, within(Math.min(withinMm, 1.96 * end.sigmaMm())));
        assertThat(end.sigmaMm()).isLessThan(0.4);
    }

    /** A tang that is all of one colour, and one that grows darker evenly, have no end to be seen. */
    @Test
    void saysWhereThereIsNone() {
        assertThat(find(FROM_ABOVE, STEEL, STEEL, y -> 0).sigmaMm()).isEqualTo(HandleFrontLine.ROUGH_SIGMA_MM);
        PlaneRaster raster = HandleFrontLine.raster(sides, 0);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        Random random = new Random(7);
        for (int i = 0; i < bgr.length; i++) {
            double x = raster.pointAt(i / 3 % raster.columns(), 0).x();
            bgr[i] = (float) (120 + 8 * x + NOISE * random.nextGaussian());
        }
        HandleEndLine end = new HandleFrontLine(sides, FROM_ABOVE, KNIFE).find(raster, bgr, 0);
        assertThat(end.sigmaMm()).isEqualTo(HandleFrontLine.ROUGH_SIGMA_MM);
        assertThat(end.x()).as("the rough place").isZero();
    }

    private HandleEndLine find(Point lean, double[] handle, double[] blade, Boundary boundary) {
        PlaneRaster raster = HandleFrontLine.raster(sides, 0);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        Random random = new Random(11);
        double blurMm = 0.2;
        for (int r = 0; r < raster.rows(); r++) {
            for (int c = 0; c < raster.columns(); c++) {
                Point p = raster.pointAt(c, r);
                // Blurred along the knife by a box: its integral is a ramp.
                double part = Math.max(0, Math.min(1, 0.5 + (p.x() - boundary.at(p.y())) / (2 * blurMm)));
                for (int k = 0; k < 3; k++) {
                    bgr[3 * (r * raster.columns() + c) + k] =
                            (float) (handle[k] + part * (blade[k] - handle[k]) + NOISE * random.nextGaussian());
                }
            }
        }
        return new HandleFrontLine(sides, lean, KNIFE).find(raster, bgr, 0);
    }
}
