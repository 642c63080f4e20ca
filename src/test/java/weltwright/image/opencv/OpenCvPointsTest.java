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
        assertThat(OpenCvPoints.all(List.of(new Point(2.4, 7.6), new Point(-0.4, -0.6)))
                        .toArray())
                .containsExactly(new org.opencv.core.Point(2, 8), new org.opencv.core.Point(0, -1));
    }
}
