package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.PhotoAdvice;

/** Noise, as good as any picture to be cut off: where its bytes end tells how much of its rows there is. */
class DamagedImageAreaTest {
    private static byte[] file;

    @BeforeAll
    static void draw() {
        OpenCvLibraries.load();
        Mat noise = new Mat(320, 320, CvType.CV_8UC3);
        Core.setRNGSeed(2);
        Core.randu(noise, 0, 256);
        MatOfByte jpeg = new MatOfByte();
        Imgcodecs.imencode(".jpg", noise, jpeg);
        file = jpeg.toArray();
    }

    @Test
    void aSoundFileHasNone() {
        DamagedImageArea area = DamagedImageArea.of(Photo.of("noise.jpg", file));
        assertThat(area.advice()).isEmpty();
        assertThat(area.error()).isEmpty();
    }

    @Test
    void ofAFileThatIsCutOffItIsTheRest() {
        DamagedImageArea area =
                DamagedImageArea.of(Photo.of("noise.jpg", Arrays.copyOf(file, (int) (0.6 * file.length))));
        PhotoAdvice advice = area.advice().orElseThrow();
        assertThat(advice).isInstanceOf(PhotoAdvice.PartDamaged.class);
        // A row of blocks is a twentieth of the picture.
        assertThat(((PhotoAdvice.PartDamaged) advice).part()).isBetween(0.35, 0.5);
        assertThat(area.error().orElseThrow().source()).isEqualTo(ErrorSource.Known.FILE_DAMAGE);
    }
}
