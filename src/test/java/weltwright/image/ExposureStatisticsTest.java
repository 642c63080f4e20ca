package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.image.opencv.OpenCvLibraries;

/** A picture whose levels are counted: each row has 1 % of 10, 4 % of 30, 85 % of 120, 7 % of 200 and 3 % of 255. */
class ExposureStatisticsTest {
    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void countsTheLightestAndTheDarkestFiftieth() {
        Mat grey = new Mat(160, 200, CvType.CV_8U);
        byte[] row = new byte[200];
        for (int x = 0; x < row.length; x++) {
            row[x] = (byte) (x < 2 ? 10 : x < 10 ? 30 : x < 180 ? 120 : x < 194 ? 200 : 255);
        }
        for (int y = 0; y < grey.rows(); y++) {
            grey.put(y, 0, row);
        }
        MatOfByte png = new MatOfByte();
        Imgcodecs.imencode(".png", grey, png);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("levels.png", png.toArray()))) {
            ExposureStatistics light = ExposureStatistics.of(picture);
            assertThat(light.whiteLevel()).isEqualTo(255);
            assertThat(light.blackLevel()).isEqualTo(30);
            assertThat(light.clippedPart()).isCloseTo(0.03, within(1e-6));
        }
    }
}
