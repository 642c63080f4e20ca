package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.image.opencv.OpenCvLibraries;

/** Compares with OpenCV's own decoding at full resolution. */
class DecodedPhotoTest {
    /** Grey levels; a file's colour is interpolated one way or the other, and rounded more than once. */
    private static final double MEAN_OFF = 1.5;

    private static final double MOST_OFF = 12;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    /** With an even and an odd number of columns or rows, and as a file without loss. */
    @ParameterizedTest
    @CsvSource({"640, 480, .jpg", "641, 480, .jpg", "640, 481, .jpg", "640, 480, .png"})
    void decodesTheColoursOfTheFile(int columns, int rows, String kind) {
        MatOfByte file = file(columns, rows, kind);
        Mat whole = Imgcodecs.imdecode(file, Imgcodecs.IMREAD_COLOR);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("blobs" + kind, file.toArray()))) {
            assertClose(picture.bgr(), whole);
            Mat half = new Mat();
            Mat even = whole.submat(0, rows / 2 * 2, 0, columns / 2 * 2);
            Imgproc.resize(even, half, new Size(columns / 2, rows / 2), 0, 0, Imgproc.INTER_AREA);
            assertClose(picture.half().bgr(), half);
            assertClose(picture.reduced(new Size(160, 120)), reduced(whole));
        }
    }

    /** Between pixels as OpenCV interpolates, and at single ones. */
    @ParameterizedTest
    @CsvSource({".jpg", ".png"})
    void interpolatesBetweenPixels(String kind) {
        MatOfByte file = file(640, 480, kind);
        Mat whole = Imgcodecs.imdecode(file, Imgcodecs.IMREAD_COLOR);
        Mat columns = new Mat(400, 300, CvType.CV_32F);
        Mat rows = new Mat(400, 300, CvType.CV_32F);
        Core.randu(columns, 2, 637);
        Core.randu(rows, 2, 477);
        Mat expected = new Mat();
        Imgproc.remap(whole, expected, columns, rows, Imgproc.INTER_LINEAR);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("blobs" + kind, file.toArray()))) {
            assertClose(picture.remap(columns, rows, Imgproc.INTER_LINEAR, Core.BORDER_CONSTANT), expected);
            for (int at = 10; at < 470; at += 23) {
                double[] truth = whole.get(at, at + 3);
                double[] seen = picture.bgrAt(at + 3, at);
                for (int k = 0; k < 3; k++) {
                    assertThat(seen[k]).isCloseTo(truth[k], within(MOST_OFF));
                }
            }
        }
    }

    private static void assertClose(Mat actual, Mat expected) {
        assertThat(actual.size()).isEqualTo(expected.size());
        Mat off = new Mat();
        Core.absdiff(actual, expected, off);
        assertThat(Core.mean(off).val[0]).isLessThan(MEAN_OFF);
        assertThat(Core.mean(off).val[2]).isLessThan(MEAN_OFF);
        assertThat(Core.minMaxLoc(off.reshape(1)).maxVal).isLessThan(MOST_OFF);
    }

    private static Mat reduced(Mat whole) {
        Mat reduced = new Mat();
        Imgproc.resize(whole, reduced, new Size(160, 120), 0, 0, Imgproc.INTER_AREA);
        return reduced;
    }

    /** Coloured blobs, a few pixels wide at least, so that a file holds their colours. */
    private static MatOfByte file(int columns, int rows, String kind) {
        Mat blobs = new Mat(rows, columns, CvType.CV_8UC3);
        Core.setRNGSeed(7);
        Core.randu(blobs, 0, 255);
        Imgproc.GaussianBlur(blobs, blobs, new Size(0, 0), 6);
        // Blurred noise is nearly grey; stretched, it has all colours.
        blobs.convertTo(blobs, -1, 8, -7 * 127);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(kind, blobs, file);
        return file;
    }
}
