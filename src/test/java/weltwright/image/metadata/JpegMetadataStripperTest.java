package weltwright.image.metadata;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Files laid out segment by segment after ITU-T T.81, annex B; what the tables and scans hold is not looked into. */
class JpegMetadataStripperTest {
    private static final byte[] NO_EXIF = new byte[0];

    private final ByteArrayOutputStream file = new ByteArrayOutputStream();

    private JpegMetadataStripperTest marker(int marker) {
        file.write(0xFF);
        file.write(marker);
        return this;
    }

    private JpegMetadataStripperTest segment(int marker, String data) {
        marker(marker);
        file.write(2 + data.length() >> 8);
        file.write(2 + data.length());
        return bytes(data);
    }

    private JpegMetadataStripperTest bytes(String data) {
        file.writeBytes(data.getBytes(ISO_8859_1));
        return this;
    }

    private static byte[] picture(String adobe) {
        JpegMetadataStripperTest plain = new JpegMetadataStripperTest().marker(0xD8);
        if (!adobe.isEmpty()) {
            plain.segment(0xEE, adobe);
        }
        return plain.segment(0xDB, "table")
                .segment(0xC0, "frame")
                .segment(0xC4, "codes")
                .segment(0xDA, "scan")
                .bytes("data\u00FF\0and\u00FF\u00D0more")
                .marker(0xD9)
                .file
                .toByteArray();
    }

    @Test
    void keepsTablesFrameScansAndHowColoursAreStored() {
        String adobe = "Adobe\0\u0064\0\0\0\0\1";
        byte[] full = marker(0xD8)
                .segment(0xE1, "Exif\0\0private")
                .segment(0xEE, adobe + "private")
                .segment(0xDB, "table")
                .segment(0xFE, "private")
                .segment(0xC0, "frame")
                .bytes("filling")
                .segment(0xC4, "codes")
                .segment(0xE2, "private")
                .segment(0xDA, "scan")
                .bytes("data\u00FF\0and\u00FF\u00D0more")
                .marker(0xD9)
                .bytes("a film")
                .file
                .toByteArray();
        assertThat(JpegMetadataStripper.strip(full, NO_EXIF)).isEqualTo(picture(adobe));
        assertThat(JpegMetadataStripper.strip(picture(""), NO_EXIF)).isEqualTo(picture(""));
    }

    @Test
    void putsInTheExifBlockFirst() {
        byte[] stripped = JpegMetadataStripper.strip(picture(""), new byte[] {'M', 'M', 0, 42});
        String text = new String(stripped, ISO_8859_1);
        assertThat(text).startsWith("\u00FF\u00D8\u00FF\u00E1\0\u000CExif\0\0MM\0*\u00FF\u00DB");
        assertThat(stripped).hasSize(picture("").length + 14);
    }

    @Test
    void whatIsCutOffStaysSo() {
        byte[] whole = picture("");
        byte[] inTheData = Arrays.copyOf(whole, whole.length - 5);
        assertThat(JpegMetadataStripper.strip(inTheData, NO_EXIF)).isEqualTo(inTheData);
        byte[] inATable = Arrays.copyOf(whole, 8);
        assertThat(JpegMetadataStripper.strip(inATable, NO_EXIF)).isEqualTo(Arrays.copyOf(whole, 2));
    }
}
