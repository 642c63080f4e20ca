package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of Java's own writer, in all the kinds of colours that it has, whole and damaged. */
class PngValidatorTest {
    @ParameterizedTest
    @CsvSource({
        BufferedImage.TYPE_3BYTE_BGR + ", false",
        BufferedImage.TYPE_4BYTE_ABGR + ", false",
        BufferedImage.TYPE_BYTE_GRAY + ", false",
        BufferedImage.TYPE_USHORT_GRAY + ", true",
        BufferedImage.TYPE_BYTE_INDEXED + ", true",
        BufferedImage.TYPE_BYTE_BINARY + ", true",
        BufferedImage.TYPE_3BYTE_BGR + ", true"
    })
    void soundFilesPass(int kind, boolean interlaced) throws IOException {
        byte[] file = file(kind, interlaced);
        assertThatCode(() -> PngValidator.check(file)).doesNotThrowAnyException();
    }

    /** Each bit behind the signature is covered by a checksum, by a length or by the order of chunks. */
    @Test
    void anyBitThatIsWrongIsFound() throws IOException {
        byte[] file = file(BufferedImage.TYPE_3BYTE_BGR, false);
        Random random = new Random(4);
        for (int i = 0; i < 200; i++) {
            byte[] damaged = file.clone();
            damaged[8 + random.nextInt(file.length - 8)] ^= (byte) (1 << random.nextInt(8));
            assertThatThrownBy(() -> PngValidator.check(damaged)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void aFileThatIsCutOffIsFound() throws IOException {
        byte[] file = file(BufferedImage.TYPE_3BYTE_BGR, true);
        for (int length = 8; length < file.length; length += 97) {
            byte[] cut = Arrays.copyOf(file, length);
            assertThatThrownBy(() -> PngValidator.check(cut)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    private static byte[] file(int kind, boolean interlaced) throws IOException {
        BufferedImage image = new BufferedImage(37, 29, kind);
        Random random = new Random(kind);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                image.setRGB(x, y, random.nextInt() | 0xFF000000);
            }
        }
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setProgressiveMode(interlaced ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), how);
        } finally {
            writer.dispose();
        }
        return file.toByteArray();
    }
}
