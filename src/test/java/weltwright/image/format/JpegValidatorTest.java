package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfInt;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.image.metadata.JpegWithExif;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * Against the decoder in the JDK, the Independent JPEG Group's, which tells a listener what it finds wrong with a file.
 */
class JpegValidatorTest {
    private static final Path SCENE = Path.of("src/test/resources/scenes/paring-paper-a4.jpg");
    private static Mat picture;

    /** What is encoded anew: a part, for that is decoded soon. */
    private static Mat part;

    @BeforeAll
    static void read() {
        OpenCvLibraries.load();
        picture = Imgcodecs.imread(SCENE.toString());
        part = picture.submat(400, 1000, 500, 1300);
    }

    static Stream<byte[]> encodings() throws IOException {
        read();
        return Stream.of(
                Files.readAllBytes(SCENE),
                encoded(),
                encoded(Imgcodecs.IMWRITE_JPEG_PROGRESSIVE, 1),
                encoded(Imgcodecs.IMWRITE_JPEG_RST_INTERVAL, 37),
                encoded(Imgcodecs.IMWRITE_JPEG_PROGRESSIVE, 1, Imgcodecs.IMWRITE_JPEG_RST_INTERVAL, 50),
                encoded(Imgcodecs.IMWRITE_JPEG_OPTIMIZE, 1, Imgcodecs.IMWRITE_JPEG_QUALITY, 40),
                encoded(Imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR, Imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR_444),
                encoded(Imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR, Imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR_422),
                encoded(Imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR, Imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR_411));
    }

    @ParameterizedTest
    @MethodSource("encodings")
    void acceptsSoundFiles(byte[] file) {
        assertThat(Photo.of("sound.jpg", file).integrity()).isEqualTo(new ImageDataIntegrity(true, Optional.empty()));
    }

    /**
     * Some cameras and programs leave the end out, fill up the data, or hang something on. Nothing of the picture is
     * lost.
     */
    @Test
    void acceptsHarmlessDeviations() throws IOException {
        byte[] file = Files.readAllBytes(SCENE);
        int end = file.length - 2;
        assertThat(Photo.of("a.jpg", with(file, end, new byte[0], 2)).integrity())
                .as("no end")
                .isEqualTo(new ImageDataIntegrity(false, Optional.empty()));
        assertThat(Photo.of("a.jpg", with(file, end, new byte[] {0, 0, 0}, 0)).integrity())
                .as("filled up")
                .isEqualTo(new ImageDataIntegrity(false, Optional.empty()));
        assertThat(Photo.of("a.jpg", with(file, file.length, new byte[5000], 0))
                        .integrity()
                        .regular())
                .as("something hung on")
                .isTrue();
        assertThat(Photo.of("a.jpg", with(file, 2, new byte[] {-1, -1, -1, -1}, 0))
                        .integrity()
                        .regular())
                .as("filled up before a marker")
                .isTrue();
    }

    /** Cut off, all before the end is right, in rows of 16 pixels; the rest is not known. */
    @Test
    void locatesTheCutOfATruncatedFile() throws IOException {
        byte[] file = Files.readAllBytes(SCENE);
        PixelRectangle half = Photo.of("a.jpg", Arrays.copyOf(file, file.length / 2))
                .integrity()
                .damaged()
                .orElseThrow();
        assertThat(half.bottom()).isEqualTo(picture.rows());
        assertThat(half.left()).isZero();
        assertThat(half.right()).isEqualTo(picture.cols());
        MatOfByte cut = new MatOfByte(with(file, file.length / 2, new byte[] {-1, (byte) 0xD9}, file.length));
        Mat shown = Imgcodecs.imdecode(cut, Imgcodecs.IMREAD_COLOR);
        for (int row = 0; row < half.top() - 16; row += 13) {
            assertThat(shown.get(row, 700)).isEqualTo(picture.get(row, 700));
        }
        PixelRectangle turned = Photo.of(
                        "a.jpg", new JpegWithExif().main(0x0112, 3, 6).bytes(Arrays.copyOf(file, file.length / 2)))
                .integrity()
                .damaged()
                .orElseThrow();
        assertThat(turned).isEqualTo(new PixelRectangle(0, 0, picture.rows() - half.top(), picture.cols()));
    }

    /** Between restart markers 37 MCUs of 16 pixels apart damage stays where it is. */
    @Test
    void locatesDamageBetweenRestartMarkers() throws IOException {
        byte[] file = encoded(Imgcodecs.IMWRITE_JPEG_RST_INTERVAL, 37);
        int found = 0;
        int inTwoRows = 0;
        Random random = new Random(5);
        for (int i = 0; i < 200; i++) {
            byte[] damaged = file.clone();
            int at = 700 + random.nextInt(file.length - 800);
            Arrays.fill(damaged, at, at + 3, (byte) 0x5A);
            Optional<PixelRectangle> area =
                    Photo.of("a.jpg", damaged).integrity().damaged();
            if (area.isPresent()) {
                found++;
                inTwoRows +=
                        area.get().bottom() - area.get().top() <= 32 ? 1 : 0; // 37 MCUs end on the same row or the next
            }
        }
        assertThat(found).isGreaterThan(60);
        assertThat(inTwoRows).as("where no restart marker was hit").isGreaterThan(found * 9 / 10);
    }

    /** What the JDK's decoder warns of, or cannot decode, is found or refused; none is traced silently. */
    @ParameterizedTest
    @MethodSource("encodings")
    void findsAllDamageThatTheDecoderWarnsOf(byte[] file) throws IOException {
        Random random = new Random(11);
        int warned = 0;
        for (int i = 0; i < 25; i++) {
            byte[] damaged = file.clone();
            int at = 640 + random.nextInt(file.length - 640);
            damaged[at] = (byte) random.nextInt();
            if (!isWarnedOf(damaged)) {
                continue;
            }
            warned++;
            try {
                assertThat(Photo.of("a.jpg", damaged).integrity().regular())
                        .as("byte %d", at)
                        .isFalse();
            } catch (UserFacingException refused) {
                assertThat(refused).hasMessageContaining("damaged");
            }
        }
        assertThat(warned).isPositive();
    }

    /** One wrong bit that leaves all codes valid: what follows is shifted, as OpenCV's own decoder shows. */
    @Test
    void locatesAShiftOfLevels() throws IOException {
        byte[] file = Files.readAllBytes(Path.of("src/test/resources/scenes/recurve-mat-inch.jpg"));
        assertThat(Photo.of("a.jpg", file).integrity().damaged()).isEmpty();
        Mat sound = Imgcodecs.imdecode(new MatOfByte(file), Imgcodecs.IMREAD_COLOR);
        file[231_409] ^= 4; // found by trying
        Mat shifted = Imgcodecs.imdecode(new MatOfByte(file), Imgcodecs.IMREAD_COLOR);
        int row = 0;
        while (Arrays.equals(sound.get(row, 700), shifted.get(row, 700))) {
            row++;
        }
        PixelRectangle area = Photo.of("a.jpg", file).integrity().damaged().orElseThrow();
        assertThat(area.top()).isBetween(row - 16, row + 16);
        assertThat(area.bottom()).isEqualTo(sound.rows());
    }

    @Test
    void refusesInvalidTables() throws IOException {
        byte[] file = Files.readAllBytes(SCENE);
        int table = indexOf(file, 0xC4);
        Arrays.fill(file, table + 4, table + 20, (byte) 0xFF);
        assertThatThrownBy(() -> Photo.of("a.jpg", file).integrity())
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("a.jpg");
    }

    private static int indexOf(byte[] file, int marker) {
        for (int at = 2; ; at++) {
            if (file[at] == (byte) 0xFF && file[at + 1] == (byte) marker) {
                return at;
            }
        }
    }

    private static boolean isWarnedOf(byte[] file) {
        AtomicInteger warnings = new AtomicInteger();
        ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
        reader.addIIOReadWarningListener((IIOReadWarningListener) (source, warning) -> warnings.incrementAndGet());
        try {
            reader.setInput(ImageIO.createImageInputStream(new ByteArrayInputStream(file)), true, true);
            BufferedImage read = reader.read(0);
            return warnings.get() > 0 || read == null;
        } catch (IOException | RuntimeException refused) {
            return true;
        } finally {
            reader.dispose();
        }
    }

    private static byte[] encoded(int... how) {
        MatOfByte file = new MatOfByte();
        assertThat(Imgcodecs.imencode(".jpg", part, file, new MatOfInt(how))).isTrue();
        return file.toArray();
    }

    private static byte[] with(byte[] file, int at, byte[] inserted, int removed) {
        int after = Math.min(file.length, at + removed);
        byte[] changed = new byte[file.length + inserted.length - (after - at)];
        System.arraycopy(file, 0, changed, 0, at);
        System.arraycopy(inserted, 0, changed, at, inserted.length);
        System.arraycopy(file, after, changed, at + inserted.length, file.length - after);
        return changed;
    }
}
