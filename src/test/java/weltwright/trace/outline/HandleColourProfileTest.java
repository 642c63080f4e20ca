package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.OutlineSides;

/** A strip of a knife of two even colours that meet at a known place. */
class HandleColourProfileTest {
    private static final double[] HANDLE = {60, 90, 140};
    private static final double[] BLADE = {150, 150, 150};
    private static final PlaneRaster RASTER = PlaneRaster.covering(new Point(-8, -10), new Point(8, 10), 0.1);
    private static final OutlineSides SIDES = new OutlineSides(
            Polyline.closed(List.of(new Point(-50, -9), new Point(50, -9), new Point(50, 9), new Point(-50, 9))));

    private static HandleColourProfile profile(double[] handle) {
        float[] bgr = new float[3 * RASTER.columns() * RASTER.rows()];
        for (int i = 0; i < bgr.length; i++) {
            double x = RASTER.pointAt(i / 3 % RASTER.columns(), 0).x();
            bgr[i] = (float) (x < 0.65 ? handle : BLADE)[i % 3];
        }
        return HandleColourProfile.near(0, 0, RASTER, bgr, SIDES);
    }

    /** The whole step where the colours meet, and none 2 mm beside it. */
    @Test
    void isWholeWhereTheColoursMeet() {
        HandleColourProfile profile = profile(HANDLE);
        assertThat(profile.at(new Point(0.65, 2))).isCloseTo(1, within(0.11));
        assertThat(profile.at(new Point(-1.5, 2))).isCloseTo(0, within(1e-3));
        assertThat(profile.at(new Point(2.5, 2))).isCloseTo(0, within(1e-3));
        assertThat(profile.at(new Point(30, 2))).as("outside").isZero();
        assertThat(profile.steepest(new Point(0, 2), 2, 0.5, 1)).isCloseTo(0.65, within(0.06));
        assertThat(profile.steepest(new Point(-4, 2), 2, 0.5, 1)).isNaN();
        assertThat(profile.steepest(new Point(0, 2), 2, 0.5, -1))
                .as("the other way")
                .isNaN();
    }

    /** Without noise the variance is what is always taken to be there: 4 in brightness and 1 in hue. */
    @Test
    void knowsHowFarTheColoursAreApart() {
        double bright = 160 * 160 / 3.0;
        double distance = Math.sqrt(bright / 4 + (90 * 90 + 60 * 60 + 10 * 10 - bright));
        assertThat(profile(HANDLE).separation()).isCloseTo(distance, within(0.01 * distance));
        assertThat(profile(BLADE).separation()).isCloseTo(0, within(1e-6));
    }
}
