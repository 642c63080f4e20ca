package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
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
     * the superellipse |z/c|^n + |y/w|^n = 1 is c (1 − |y/w|^n)^(1/n) high. The line is told where it meets the
     * outline, where that is nothing. Told is an oval handle, n = 2.6 give or take 0.3, and its greatest thickness; a
     * front somewhat thinner, rounder or squarer must lie within what the program claims.
     */
    @ParameterizedTest
    @CsvSource({"2.6, 0.9, 0.1", "2.6, 1, 0.2", "2.6, 0.8, 0.2", "2.4, 0.9, 0.3", "2.8, 0.9, 0.3"})
    void takesTheBowOffThatATiltedCameraMakes(double n, double part, double withinMm) {
        double lean = -0.25;
        HandleEndLine end = find(
                new Point(lean, 0), WOOD, STEEL, y -> 0.5 - lean * part * HANDLE_MM / 2 * height(y / HALF_WIDTH_MM, n));
        assertThat(end.rim().part()).isCloseTo(part, within(0.07));
        assertThat(end.at(HALF_WIDTH_MM)).isCloseTo(0.5, within(Math.min(withinMm, 1.96 * end.sigmaMm())));
        assertThat(end.at(-HALF_WIDTH_MM)).isCloseTo(0.5, within(Math.min(withinMm, 1.96 * end.sigmaMm())));
        assertThat(end.sigmaMm()).isLessThan(0.4);
    }

    /**
     * Where the face of the front is turned to the camera, it is seen between the rim, z times the lean nearer to the
     * butt, and its foot on the blade's flat, 1.1 mm above the mid-plane. It is as dark as a face in shadow, or as
     * bright as the steel.
     */
    @ParameterizedTest
    @ValueSource(doubles = {30, 75, 150})
    void findsTheFootOfAVisibleFace(double bright) {
        double lean = 0.25;
        double[] face = {bright, bright, bright};
        Boundary rim = y -> 0.5 - lean * 0.9 * HANDLE_MM / 2 * height(y / HALF_WIDTH_MM, 2.6);
        Boundary foot = y -> Math.max(rim.at(y), 0.5 - 1.1 * lean);
        HandleEndLine end = find(new Point(lean, 0), List.of(WOOD, face, STEEL), List.of(rim, foot));
        assertThat(end.at(0)).isCloseTo(0.5, within(Math.min(0.3, 1.96 * end.sigmaMm())));
        assertThat(end.sigmaMm()).isLessThan(0.4);
    }

    private static double height(double part, double n) {
        return Math.pow(1 - Math.pow(Math.min(1, Math.abs(part)), n), 1 / n);
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
        return find(lean, List.of(handle, blade), List.of(boundary));
    }

    /** @param colours along the knife, each boundary between two of them */
    private HandleEndLine find(Point lean, List<double[]> colours, List<Boundary> boundaries) {
        PlaneRaster raster = HandleFrontLine.raster(sides, 0);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        Random random = new Random(11);
        double blurMm = 0.2;
        for (int r = 0; r < raster.rows(); r++) {
            for (int c = 0; c < raster.columns(); c++) {
                Point p = raster.pointAt(c, r);
                for (int k = 0; k < 3; k++) {
                    double value = colours.get(0)[k];
                    for (int b = 0; b < boundaries.size(); b++) {
                        // Blurred along the knife by a box: its integral is a ramp.
                        double off = p.x() - boundaries.get(b).at(p.y());
                        double part = Math.max(0, Math.min(1, 0.5 + off / (2 * blurMm)));
                        value += part * (colours.get(b + 1)[k] - colours.get(b)[k]);
                    }
                    bgr[3 * (r * raster.columns() + c) + k] = (float) (value + NOISE * random.nextGaussian());
                }
            }
        }
        return new HandleFrontLine(sides, lean, KNIFE).find(raster, bgr, 0);
    }
}
