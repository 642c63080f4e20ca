package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Bits as ITU-T T.81, section F.1.2.3, writes them. */
class JpegBitReaderTest {
    @Test
    void takesBitsAcrossBytesAndSkipsWhatIsStuffed() {
        JpegBitReader bits = JpegBits.reader("101" + "11111" + "11111111" + "0000000000000001" + "1010");
        assertThat(bits.take(3)).isEqualTo(5);
        assertThat(bits.peek(16)).isEqualTo(0xFFF8);
        assertThat(bits.take(13)).isEqualTo(0x1FFF);
        assertThat(bits.take(16)).isEqualTo(1);
        bits.skip(2);
        assertThat(bits.take(2)).isEqualTo(2);
    }

    @Test
    void countsWhatIsLeftAndSaysThatItEnds() {
        JpegBitReader bits = JpegBits.reader("10110100" + "11111111" + "00000000");
        assertThat(bits.take(5)).isEqualTo(22);
        assertThat(bits.remaining()).isEqualTo(19);
        bits.take(11);
        bits.take(8);
        assertThat(bits.isOverrun()).isFalse();
        assertThat(bits.remaining()).isZero();
        assertThat(bits.take(1)).isZero();
        assertThat(bits.isOverrun()).isTrue();
    }

    /** More bytes of ones before the stuffed one say nothing: T.81, section B.1.1.2. */
    @Test
    void readsRepeatedFillingAsOneByte() {
        byte[] file = {(byte) 0xFF, (byte) 0xFF, 0, 0x40};
        JpegBitReader bits = new JpegBitReader(file, 0, file.length);
        assertThat(bits.take(8)).isEqualTo(0xFF);
        assertThat(bits.take(8)).isEqualTo(0x40);
    }
}
