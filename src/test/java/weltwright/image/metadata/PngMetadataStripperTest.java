package weltwright.image.metadata;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;

/** Files laid out chunk by chunk after PNG 1.2, section 3. */
class PngMetadataStripperTest {
    private static final byte[] EXIF = {'M', 'M', 0, 42};

    private static byte[] file(String... kinds) {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
        for (String kind : kinds) {
            byte[] data = ("data of " + kind).getBytes(US_ASCII);
            CRC32 checksum = new CRC32();
            checksum.update(kind.getBytes(US_ASCII));
            checksum.update(data);
            file.writeBytes(ByteBuffer.allocate(12 + data.length)
                    .putInt(data.length)
                    .put(kind.getBytes(US_ASCII))
                    .put(data)
                    .putInt((int) checksum.getValue())
                    .array());
        }
        return file.toByteArray();
    }

    private static List<String> kinds(byte[] file) {
        List<String> kinds = new ArrayList<>();
        for (int at = 8;
                at + 12 <= file.length;
                at += 12 + ByteBuffer.wrap(file).getInt(at)) {
            kinds.add(new String(file, at + 4, 4, US_ASCII));
        }
        return kinds;
    }

    @Test
    void keepsWhatAPictureIsDecodedFrom() {
        byte[] file = file("IHDR", "pHYs", "PLTE", "tRNS", "tEXt", "IDAT", "tIME", "IDAT", "IEND", "tEXt");
        assertThat(PngMetadataStripper.strip(file, new byte[0]))
                .isEqualTo(file("IHDR", "PLTE", "tRNS", "IDAT", "IDAT", "IEND"));
    }

    /** Behind the header, with a checksum that is right. */
    @Test
    void putsInTheExifBlock() {
        byte[] stripped = PngMetadataStripper.strip(file("IHDR", "eXIf", "IDAT", "IEND"), EXIF);
        assertThat(kinds(stripped)).containsExactly("IHDR", "eXIf", "IDAT", "IEND");
        int at = 8 + 12 + "data of IHDR".length();
        CRC32 checksum = new CRC32();
        checksum.update(stripped, at + 4, 4 + EXIF.length);
        assertThat(ByteBuffer.wrap(stripped).getInt(at + 8 + EXIF.length)).isEqualTo((int) checksum.getValue());
    }

    @Test
    void whatIsCutOffStaysSo() {
        byte[] file = file("IHDR", "tEXt", "IDAT");
        byte[] cut = Arrays.copyOf(file, file.length - 7);
        byte[] kept = file("IHDR", "IDAT");
        assertThat(PngMetadataStripper.strip(cut, new byte[0])).isEqualTo(Arrays.copyOf(kept, kept.length - 7));
    }
}
