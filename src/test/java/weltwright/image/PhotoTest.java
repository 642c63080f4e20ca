package weltwright.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.ImageIO;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.image.format.ImageFormat;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.JpegWithExif;

class PhotoTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"jpg, JPEG", "png, PNG", "bmp, BMP", "tif, TIFF"})
    void readsTheKindsOfPictures(String extension, ImageFormat format) throws IOException {
        Path file = folder.resolve("knife." + extension);
        assertThat(ImageIO.write(picture(64, 48), extension, file.toFile())).isTrue();

        Photo photo = Photo.read(file);

        assertThat(photo.format()).isEqualTo(format);
        assertThat(photo.name()).isEqualTo("knife." + extension);
        assertThat(photo.widthPx()).isEqualTo(64);
        assertThat(photo.heightPx()).isEqualTo(48);
        assertThat(photo.orientation()).isEqualTo(1);
        assertThat(photo.focal35mm()).isEmpty();
        if (format != ImageFormat.TIFF) { // rewritten
            assertThat(photo.bytes()).isEqualTo(Files.readAllBytes(file));
        }
        assertThat(photo).isEqualTo(Photo.of("knife." + extension, photo.bytes()));
    }

    /** The simple file layout of the WebP container (RIFF, "WEBP", "VP8L"): sizes less one in 14 bits each. */
    @Test
    void readsWebp() {
        ByteBuffer webp = ByteBuffer.allocate(26).order(ByteOrder.LITTLE_ENDIAN);
        webp.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(18);
        webp.put("WEBPVP8L".getBytes(StandardCharsets.US_ASCII)).putInt(6);
        webp.put((byte) 0x2f).putInt(63 | 47 << 14);

        Photo photo = Photo.of("knife.webp", webp.array());

        assertThat(photo.format()).isEqualTo(ImageFormat.WEBP);
        assertThat(photo.widthPx()).isEqualTo(64);
        assertThat(photo.heightPx()).isEqualTo(48);
    }

    /**
     * Exif 2.32, tags 40962 and 40963, state the size as taken; without them an aspect ratio that no camera has counts
     * as cropped.
     */
    @Test
    void recognizesACroppedPhoto() throws IOException {
        JpegWithExif taken = new JpegWithExif().sub(0xA002, 4, 4000).sub(0xA003, 4, 3000);
        assertThat(Photo.of("a.jpg", taken.bytes(picture(160, 120))).isCutOut()).isFalse();
        assertThat(Photo.of("a.jpg", taken.bytes(picture(120, 160))).isCutOut())
                .as("turned")
                .isFalse();
        assertThat(Photo.of("a.jpg", taken.bytes(picture(160, 90))).isCutOut()).isTrue();
        JpegWithExif silent = new JpegWithExif();
        assertThat(Photo.of("a.jpg", silent.bytes(picture(160, 120))).isCutOut())
                .isFalse();
        assertThat(Photo.of("a.jpg", silent.bytes(picture(160, 90))).isCutOut()).isFalse();
        assertThat(Photo.of("a.jpg", silent.bytes(picture(147, 120))).isCutOut())
                .isTrue();
    }

    /** Exif 2.32, tags 271 and 272. */
    @Test
    void readsMakeAndModel() throws IOException {
        JpegWithExif file = new JpegWithExif().words(0x010F, "Invented").words(0x0110, "Invented X 3 ");
        Photo photo = Photo.of("knife.jpg", file.bytes(picture(8, 8)));
        assertThat(photo.camera()).contains(new CameraIdentity("Invented", "Invented X 3"));
        assertThat(photo.camera().orElseThrow()).hasToString("Invented X 3");
        assertThat(Photo.of("knife.jpg", new JpegWithExif().bytes(picture(8, 8)))
                        .camera())
                .isEmpty();
    }

    @Test
    void recognizesTheFormatByContent() throws IOException {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(picture(8, 8), "png", png);
        assertThat(Photo.of("knife.jpg", png.toByteArray()).format()).isEqualTo(ImageFormat.PNG);
    }

    /** Orientations 5 to 8 exchange rows and columns: Exif 2.32, tag 0x0112. */
    @ParameterizedTest
    @CsvSource({"1, 64, 48", "2, 64, 48", "3, 64, 48", "4, 64, 48", "5, 48, 64", "6, 48, 64", "7, 48, 64", "8, 48, 64"})
    void appliesTheExifOrientation(int orientation, int width, int height) throws IOException {
        Photo photo = Photo.of(
                "knife.jpg", new JpegWithExif().main(0x0112, 3, orientation).bytes(picture(64, 48)));
        assertThat(photo.orientation()).isEqualTo(orientation);
        assertThat(photo.widthPx()).isEqualTo(width);
        assertThat(photo.heightPx()).isEqualTo(height);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 9, 65535})
    void treatsAnUnknownOrientationAsUpright(int orientation) throws IOException {
        Photo photo = Photo.of(
                "knife.jpg", new JpegWithExif().main(0x0112, 3, orientation).bytes(picture(64, 48)));
        assertThat(photo.orientation()).isEqualTo(1);
    }

    @Test
    void readsTheFocalLengthIn35mmTerms() throws IOException {
        Photo photo =
                Photo.of("knife.jpg", new JpegWithExif().sub(0xA405, 3, 26).bytes(picture(64, 48)));
        assertThat(photo.focal35mm()).hasValue(26);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 60000})
    void ignoresAnImplausibleFocalLength(int focal) throws IOException {
        Photo photo =
                Photo.of("knife.jpg", new JpegWithExif().sub(0xA405, 3, focal).bytes(picture(64, 48)));
        assertThat(photo.focal35mm()).isEmpty();
    }

    /**
     * A 50 mm lens on a sensor of 24 mm by 16 mm, two thirds of 35 mm film each way, is a 75 mm lens in 35 mm terms.
     * 6000 pixels on 24 mm are 2500 to the cm, and 6350 to the inch.
     */
    @ParameterizedTest
    @CsvSource({"3, 2500", "2, 6350", "4, 250"})
    void derivesTheFocalLengthFromTheSensorSize(int unit, int resolution) throws IOException {
        JpegWithExif file = new JpegWithExif()
                .sub(0x920A, 5, 50)
                .sub(0xA002, 4, 6000)
                .sub(0xA003, 4, 4000)
                .sub(0xA20E, 5, resolution)
                .sub(0xA20F, 5, resolution)
                .sub(0xA210, 3, unit);
        Photo photo = Photo.of("knife.jpg", file.bytes(picture(60, 40)));
        assertThat(photo.focal35mm().orElseThrow()).isCloseTo(75, within(1e-9));
    }

    @Test
    void ignoresTheFocalLengthOfACroppedPicture() throws IOException {
        JpegWithExif file =
                new JpegWithExif().sub(0xA405, 3, 26).sub(0xA002, 4, 4000).sub(0xA003, 4, 3000);
        assertThat(Photo.of("whole.jpg", file.bytes(picture(400, 300))).focal35mm())
                .hasValue(26);
        assertThat(Photo.of("turned.jpg", file.bytes(picture(300, 400))).focal35mm())
                .hasValue(26);
        assertThat(Photo.of("cropped.jpg", file.bytes(picture(300, 300))).focal35mm())
                .isEmpty();
    }

    @Test
    void copiesItsBytes() throws IOException {
        byte[] bytes = new JpegWithExif().bytes(picture(8, 8));
        Photo photo = Photo.of("knife.jpg", bytes);
        byte first = bytes[0];
        bytes[0] = 0;
        photo.bytes()[0] = 0;
        assertThat(photo.bytes()[0]).isEqualTo(first);
    }

    @Test
    void refusesAFileThatIsMissingOrAFolderOrEmpty() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.jpg"));
        assertThatThrownBy(() -> Photo.read(folder.resolve("none.jpg")))
                .isInstanceOf(UserFacingException.class)
                .hasMessageStartingWith("There is no file ")
                .hasMessageContaining("none.jpg");
        assertThatThrownBy(() -> Photo.read(folder))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("is not a file");
        assertThatThrownBy(() -> Photo.read(empty))
                .isInstanceOf(UserFacingException.class)
                .hasMessageStartingWith("empty.jpg is empty.");
    }

    @Test
    void refusesAFileThatIsNoPicture() {
        for (String content : new String[] {"x", "Dear sir or madam", "%PDF-1.4\n%", "GIF89a\1\0\1\0\0\0\0"}) {
            assertThatThrownBy(() -> Photo.of("letter.jpg", content.getBytes(StandardCharsets.ISO_8859_1)))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("letter.jpg");
        }
    }

    /** The brand of an ISO base media file that holds HEVC pictures: ISO/IEC 23008-12. */
    @Test
    void refusesHeicWithAdvice() {
        byte[] heic = "\0\0\0\30ftypheic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1);
        assertThatThrownBy(() -> Photo.of("knife.heic", heic))
                .isInstanceOf(UserFacingException.class)
                .hasMessage("knife.heic is a HEIC photo, which cannot be read here. Save or share it from the phone as"
                        + " JPEG.");
    }

    @Test
    void refusesMorePixelsThanFitIntoMemory() throws IOException {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(picture(8, 8), "png", png);
        byte[] bytes = png.toByteArray();
        ByteBuffer.wrap(bytes).putInt(16, 20_000).putInt(20, 10_001); // in the IHDR chunk
        assertThatThrownBy(() -> Photo.of("wall.png", bytes))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("20000 by 10001 pixels");
    }

    @Test
    void refusesAFileLargerThanAnyPhoto() throws IOException {
        Path file = folder.resolve("film.jpg");
        try (RandomAccessFile film = new RandomAccessFile(file.toFile(), "rw")) {
            film.setLength(200_000_001); // takes no room on the disk
        }
        assertThatThrownBy(() -> Photo.read(file))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("film.jpg is larger than 200 MB");
    }

    /** Any content is either read or refused with a user-facing message. */
    @Test
    void damagedFilesAreReadOrRefused() throws IOException {
        byte[] whole = new JpegWithExif()
                .main(0x0112, 3, 6)
                .sub(0xA405, 3, 26)
                .sub(0x920A, 5, 50)
                .bytes(picture(64, 48));
        Random random = new Random(1);
        for (int i = 0; i < 3000; i++) {
            byte[] damaged = Arrays.copyOf(whole, 1 + random.nextInt(whole.length));
            for (int flips = random.nextInt(4); flips > 0; flips--) {
                damaged[random.nextInt(Math.min(damaged.length, 400))] = (byte) random.nextInt();
            }
            assertThatCode(() -> readOrRefuse(damaged)).doesNotThrowAnyException();
        }
    }

    private static void readOrRefuse(byte[] bytes) {
        try {
            assertThat(Photo.of("damaged.jpg", bytes))
                    .extracting(Photo::widthPx, InstanceOfAssertFactories.INTEGER)
                    .isPositive();
        } catch (UserFacingException trouble) {
            assertThat(trouble).hasMessageStartingWith("damaged.jpg ");
        }
    }

    private static BufferedImage picture(int width, int height) {
        return new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    }
}
