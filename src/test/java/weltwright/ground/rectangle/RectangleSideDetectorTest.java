package weltwright.ground.rectangle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;
import weltwright.image.InterpolatedChannel;
import weltwright.image.opencv.OpenCvLibraries;

/** An edge drawn by how much of each pixel lies on its light side, in light, then in the levels of IEC 61966-2-1. */
class RectangleSideDetectorTest {
    private static final int WIDTH = 900;
    private static final int HEIGHT = 200;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    /** Bent a little, as a wide lens bends it. */
    private static double edge(double x) {
        return 100.3 + 0.02 * x - 3 * Math.pow((x - 450) / 400, 2);
    }

    private static InterpolatedChannel picture(boolean whiteBelow, double hiddenPart) {
        byte[] levels = new byte[WIDTH * HEIGHT];
        for (int i = 0; i < levels.length; i++) {
            double below = Math.max(0, Math.min(1, 0.5 + (i / WIDTH - edge(i % WIDTH)) / 2));
            double white = whiteBelow ? below : 1 - below;
            double light = i % WIDTH > 300 && i % WIDTH < 300 + hiddenPart * WIDTH ? 0.15 : 0.1 + 0.7 * white;
            double level = light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
            levels[i] = (byte) Math.round(255 * level);
        }
        Mat picture = new Mat(HEIGHT, WIDTH, CvType.CV_8U);
        picture.put(0, 0, levels);
        return new InterpolatedChannel(picture);
    }

    /** The lighter side is to the left of the way in numbers: below, where y grows downwards, as x grows. */
    private static List<Point> detect(InterpolatedChannel levels, int sign) {
        return RectangleSideDetector.detect(levels, new Point(20, 101), new Point(880, 112), sign);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3})
    void followsTheEdgeWhereItIsSeen(double hiddenPart) {
        for (int sign : new int[] {1, -1}) {
            List<Point> points = detect(picture(sign > 0, hiddenPart), sign);
            assertThat(points)
                    .hasSizeGreaterThan((int) (0.9 * (1 - hiddenPart - 0.1) * RectangleSideDetector.PROFILES));
            assertThat(points).allMatch(p -> Math.abs(p.y() - edge(p.x())) < 0.15);
        }
    }

    @Test
    void findsNoneWhereThereIsNone() {
        assertThat(detect(picture(true, 1), 1)).isEmpty();
        assertThat(detect(picture(true, 0), -1))
                .as("dark paper on something light")
                .isEmpty();
    }
}
