package weltwright.image.opencv;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;

class OpenCvPointsTest {
    /** The centre of a pixel is a whole number, so a pixel reaches half of one to either side of it. */
    @Test
    void namesThePixelThatAPlaceLiesIn() {
        OpenCvLibraries.load();
        assertThat(OpenCvPoints.rounded(List.of(new Point(2.4, 7.6), new Point(-0.4, -0.6)))
                        .toArray())
                .containsExactly(new org.opencv.core.Point(2, 8), new org.opencv.core.Point(0, -1));
    }

    /** Halves and quarters have no error in single precision. */
    @Test
    void keepsFractions() {
        OpenCvLibraries.load();
        assertThat(OpenCvPoints.exact(List.of(new Point(2.25, -7.5))).toArray())
                .containsExactly(new org.opencv.core.Point(2.25, -7.5));
    }
}
