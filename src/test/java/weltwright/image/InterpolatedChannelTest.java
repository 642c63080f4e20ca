package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/** A ramp, level 3x + 2y: bilinear interpolation and means along straight lines are exact on it. */
class InterpolatedChannelTest {
    private static final int COLUMNS = 40;
    private static final int ROWS = 30;

    private InterpolatedChannel ramp;

    @BeforeEach
    void draw() {
        OpenCvLibraries.load();
        Mat levels = new Mat(ROWS, COLUMNS, CvType.CV_8U);
        for (int y = 0; y < ROWS; y++) {
            for (int x = 0; x < COLUMNS; x++) {
                levels.put(y, x, new byte[] {(byte) level(x, y)});
            }
        }
        ramp = new InterpolatedChannel(levels);
    }

    private static double level(double x, double y) {
        return 3 * x + 2 * y;
    }

    @Test
    void readsBetweenPixels() {
        assertThat(ramp.at(12.3, 7.8)).isCloseTo(level(12.3, 7.8), within(1e-9));
        assertThat(ramp.at(0, 0)).isZero();
    }

    /** The last column is reached to a thousandth of a pixel. */
    @Test
    void readsTheRimOutside() {
        assertThat(ramp.at(-5, 11.5)).isCloseTo(level(0, 11.5), within(1e-9));
        assertThat(ramp.at(100, 11.5)).isCloseTo(level(COLUMNS - 1, 11.5), within(0.01));
    }

    @Test
    void meansAlongStripsFollowEachOtherToTheLeft() {
        Point middle = new Point(20, 15);
        Point along = new Point(0.6, 0.8);
        double[] profile = ramp.profile(middle, along, 4, 1, 6, 0.5);
        assertThat(profile).hasSize(13);
        for (int k = 0; k < profile.length; k++) {
            Point at = middle.plus(along.left().times(0.5 * (k - 6)));
            assertThat(profile[k]).isCloseTo(level(at.x(), at.y()), within(1e-9));
        }
    }

    @Test
    void containsWhatLiesWithinItsMargin() {
        assertThat(ramp.contains(new Point(2, 2), 2)).isTrue();
        assertThat(ramp.contains(new Point(1.9, 5), 2)).isFalse();
        assertThat(ramp.contains(new Point(COLUMNS - 3, ROWS - 3), 2)).isTrue();
        assertThat(ramp.contains(new Point(5, ROWS - 2.9), 2)).isFalse();
    }
}
