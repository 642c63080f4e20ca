package weltwright.ground.ruled;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.InterpolatedChannel;
import weltwright.image.opencv.OpenCvLibraries;

/** Drawn lines that cross at a known place; one of the four stretches round it may be covered. */
class LineCrossingFinderTest {
    private static final DrawnRuling RULING =
            new DrawnRuling(new Point(200.3, 190.7), new Point(30, -3.5), new Point(-3, -28));

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    private static Optional<LineCrossing> near(Mat picture, int leastArms) {
        return new LineCrossingFinder(new InterpolatedChannel(picture), -1, 2)
                .near(RULING.crossing().plus(new Point(1.2, -0.8)), RULING.right(), RULING.up(), 5, leastArms);
    }

    @Test
    void findsTheCrossingToAFractionOfAPixel() {
        LineCrossing found = near(RULING.picture(), 4).orElseThrow();
        assertThat(found.pixel().distance(RULING.crossing())).isLessThan(0.05);
        assertThat(found.arms()).isEqualTo(4);
        // Read between pixels, a line drawn with a contrast of 60 and a width of two pixels is paler by a tenth.
        assertThat(found.contrast()).isCloseTo(54, within(4.0));
    }

    @Test
    void threeArmsAreEnoughWhereTheyAreAskedFor() {
        Mat picture = RULING.picture();
        Imgproc.rectangle(
                picture,
                new org.opencv.core.Point(
                        RULING.crossing().x() + 3, RULING.crossing().y() - 20),
                new org.opencv.core.Point(
                        RULING.crossing().x() + 26, RULING.crossing().y() + 10),
                Scalar.all(180),
                Imgproc.FILLED);
        assertThat(near(picture, 4)).isEmpty();
        LineCrossing found = near(picture, 3).orElseThrow();
        assertThat(found.arms()).isEqualTo(3);
        assertThat(found.pixel().distance(RULING.crossing())).isLessThan(0.5);
    }
}
