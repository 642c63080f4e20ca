package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.image.opencv.OpenCvLibraries;

/** Pictures that OpenCV wrote without loss: read back, each pixel is what it was. */
class ImageIoDecoderTest {
    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @ParameterizedTest
    @CsvSource({".png", ".tif", ".bmp"})
    void readsWhatAnotherLibraryWrote(String kind) throws IOException {
        Mat noise = new Mat(90, 120, CvType.CV_8UC3);
        Core.setRNGSeed(5);
        Core.randu(noise, 0, 256);
        Mat read = ImageIoDecoder.decode(Photo.of("noise" + kind, file(kind, noise)));
        assertThat(Core.norm(read, noise, Core.NORM_INF)).isZero();
    }

    /** A picture of one channel becomes one of three. */
    @Test
    void givesThreeChannelsForOne() throws IOException {
        Mat grey = new Mat(90, 120, CvType.CV_8U);
        grey.setTo(Scalar.all(255));
        Mat read = ImageIoDecoder.decode(Photo.of("grey.bmp", file(".bmp", grey)));
        assertThat(read.type()).isEqualTo(CvType.CV_8UC3);
        assertThat(read.get(40, 60)).containsExactly(255, 255, 255);
    }

    @Test
    void saysThatAFileIsDamaged() {
        Mat noise = new Mat(90, 120, CvType.CV_8UC3);
        Core.randu(noise, 0, 256);
        byte[] bmp = file(".bmp", noise);
        Photo cut = Photo.of("cut.bmp", Arrays.copyOf(bmp, bmp.length / 3));
        assertThatThrownBy(() -> ImageIoDecoder.decode(cut)).isInstanceOf(IOException.class);
    }

    private static byte[] file(String kind, Mat picture) {
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(kind, picture, file);
        return file.toArray();
    }
}
