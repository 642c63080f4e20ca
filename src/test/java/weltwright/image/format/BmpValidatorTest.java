package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files of Java's own writer, whole and with bytes missing or there twice. */
class BmpValidatorTest {
    @ParameterizedTest
    @ValueSource(
            ints = {
                BufferedImage.TYPE_3BYTE_BGR,
                BufferedImage.TYPE_BYTE_GRAY,
                BufferedImage.TYPE_BYTE_BINARY,
                BufferedImage.TYPE_INT_RGB
            })
    void soundFilesPass(int kind) throws IOException {
        byte[] file = file(kind);
        assertThatCode(() -> BmpValidator.check(file)).doesNotThrowAnyException();
        byte[] withoutLength = file.clone();
        Arrays.fill(withoutLength, 2, 6, (byte) 0);
        assertThatCode(() -> BmpValidator.check(withoutLength)).doesNotThrowAnyException();
    }

    @Test
    void aStretchThatIsThereTwiceIsFound() throws IOException {
        byte[] file = file(BufferedImage.TYPE_3BYTE_BGR);
        byte[] longer = Arrays.copyOf(file, file.length + 224);
        System.arraycopy(file, 1000, longer, 1224, file.length - 1000);
        assertThatThrownBy(() -> BmpValidator.check(longer)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aStretchThatIsMissingIsFound() throws IOException {
        byte[] file = file(BufferedImage.TYPE_3BYTE_BGR);
        byte[] shorter = Arrays.copyOf(file, file.length - 30);
        System.arraycopy(file, 1030, shorter, 1000, file.length - 1030);
        assertThatThrownBy(() -> BmpValidator.check(shorter)).isInstanceOf(IllegalArgumentException.class);
    }

    private static byte[] file(int kind) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(37, 29, kind), "bmp", file);
        return file.toByteArray();
    }
}
