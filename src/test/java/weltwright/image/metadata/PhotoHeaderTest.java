package weltwright.image.metadata;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.error.UserFacingException;
import weltwright.image.format.ImageFormat;

/** Files of Java's own writers; Exif tags by CIPA DC-008. */
class PhotoHeaderTest {
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;

    private static BufferedImage picture(int width, int height) {
        return new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    }

    @ParameterizedTest
    @CsvSource({"jpg, JPEG", "png, PNG", "bmp, BMP", "tiff, TIFF"})
    void knowsFormatAndSize(String kind, ImageFormat format) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        ImageIO.write(picture(64, 48), kind, file);
        PhotoHeader header = PhotoHeader.stripped("a", file.toByteArray()).header();
        assertThat(header.format()).isEqualTo(format);
        assertThat(header.storedWidthPx()).isEqualTo(64);
        assertThat(header.storedHeightPx()).isEqualTo(48);
        assertThat(header.isTransposed()).isFalse();
        assertThat(header.focal35mm()).isEmpty();
        assertThat(header.cutOut()).as("4:3 is what cameras take").isFalse();
    }

    /** 5 mm before a sensor of 6.4 by 4.8 mm: larger by the ratio of the diagonals, 43.27 over 8. */
    @Test
    void findsTheFocalLengthByTheSensorsSize() throws IOException {
        byte[] file = new JpegWithExif()
                .main(0x0112, SHORT, 6)
                .sub(0x920A, RATIONAL, 5)
                .sub(0xA20E, RATIONAL, 100)
                .sub(0xA20F, RATIONAL, 100)
                .sub(0xA210, SHORT, 3)
                .bytes(picture(64, 48));
        PhotoHeader header = PhotoHeader.stripped("a.jpg", file).header();
        assertThat(header.focal35mm().orElseThrow()).isCloseTo(5 * Math.hypot(36, 24) / 8, within(1e-9));
        assertThat(header.isTransposed()).as("turned by a quarter").isTrue();
    }

    /** Taken 4000 by 3000, now of another shape: the focal length no longer holds. */
    @Test
    void knowsAPartOfAPhoto() throws IOException {
        byte[] file = new JpegWithExif()
                .sub(0xA405, SHORT, 26)
                .sub(0xA002, LONG, 4000)
                .sub(0xA003, LONG, 3000)
                .bytes(picture(64, 30));
        PhotoHeader header = PhotoHeader.stripped("a.jpg", file).header();
        assertThat(header.cutOut()).isTrue();
        assertThat(header.focal35mm()).isEmpty();
    }

    @Test
    void saysWhatAFileIsThatCannotBeRead() {
        assertThatThrownBy(() -> PhotoHeader.stripped("a.jpg", new byte[0]))
                .isInstanceOf(UserFacingException.class)
                .hasMessageStartingWith("a.jpg is empty.");
        assertThatThrownBy(() -> PhotoHeader.stripped("a.txt", "only words in here".getBytes()))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("is not a picture");
        assertThatThrownBy(() -> PhotoHeader.stripped("a.gif", "GIF89a\1\0\1\0\0\0\0;".getBytes()))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("GIF");
    }
}
