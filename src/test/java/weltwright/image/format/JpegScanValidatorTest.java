package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Scans written bit by bit as ITU-T T.81 codes them, of one component and two blocks: differences by table K.3, and for
 * the other coefficients a table of three codes, 0 for the end of a block, 10 for a value of one bit, 110 for one of
 * one bit behind fifteen zeros.
 */
class JpegScanValidatorTest {
    private static final byte[] FRAME = {8, 0, 8, 0, 16, 1, 1, 0x11, 0};

    private static JpegScanValidator scan() {
        int[] counts = new int[16];
        counts[0] = 1;
        counts[1] = 1;
        counts[2] = 1;
        HuffmanTable others = new HuffmanTable(counts, new byte[] {0, 0x01, (byte) 0xF1});
        JpegFrameHeader frame = JpegFrameHeader.of(0xC0, FRAME, 0, FRAME.length);
        JpegScanValidator.ScanComponent part = new JpegScanValidator.ScanComponent(
                frame.components().get(0), HuffmanTableTest.ofBrightness(), others, 16);
        return new JpegScanValidator(frame, List.of(part), 0, 63, 0, 0);
    }

    private static JpegScanValidator.SegmentResult read(String bits) {
        JpegScanValidator scan = scan();
        assertThat(scan.mcusAcross()).isEqualTo(2);
        assertThat(scan.mcusDown()).isEqualTo(1);
        return scan.read(JpegBits.reader(bits), 0, 2);
    }

    /** A difference of 3, one other value, the end; then a difference of 0 and the end: 12 bits of 16. */
    @Test
    void readsWhatIsRight() {
        JpegScanValidator.SegmentResult read = read("011" + "11" + "10" + "1" + "0" + "00" + "0");
        assertThat(read.mcus()).isEqualTo(2);
        assertThat(read.ranOut()).isFalse();
        assertThat(read.bitsLeft()).isEqualTo(4);
    }

    @Test
    void saysThatTheDataEndTooSoon() {
        JpegScanValidator.SegmentResult read = read("011" + "11" + "10" + "1");
        assertThat(read.mcus()).isZero();
        assertThat(read.ranOut()).isTrue();
    }

    /** Nine ones are no code of table K.3. */
    @Test
    void stopsAtWhatIsNoCode() {
        JpegScanValidator.SegmentResult read = read("00" + "0" + "111111111" + "000000000000");
        assertThat(read.mcus()).isEqualTo(1);
        assertThat(read.ranOut()).isFalse();
    }

    /** Five times sixteen coefficients, where a block has 63 besides its first. */
    @Test
    void stopsAtCoefficientsBeyondTheBlock() {
        JpegScanValidator.SegmentResult read = read("00" + ("110" + "1").repeat(5) + "0");
        assertThat(read.mcus()).isZero();
        assertThat(read.ranOut()).isFalse();
    }

    /** 2047 times a step of 16 is brighter than white by far. */
    @Test
    void stopsAtABrightnessThatThereIsNone() {
        assertThat(read("111111110" + "1111111111" + "0" + "00" + "0").mcus()).isZero();
    }
}
