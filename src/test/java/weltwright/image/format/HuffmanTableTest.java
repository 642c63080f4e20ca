package weltwright.image.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The table for differences of brightness of ITU-T T.81, table K.3: categories 0 to 11. */
class HuffmanTableTest {
    private static final int[] COUNTS = {0, 1, 5, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0};
    private static final String[] CODES = {
        "00", "010", "011", "100", "101", "110", "1110", "11110", "111110", "1111110", "11111110", "111111110"
    };

    static HuffmanTable ofBrightness() {
        return new HuffmanTable(COUNTS, new byte[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11});
    }

    @Test
    void readsTheCodesOfTheStandard() {
        HuffmanTable table = ofBrightness();
        assertThat(table.shortest()).isEqualTo(2);
        JpegBitReader bits = JpegBits.reader(String.join("", CODES));
        for (int category = 0; category < CODES.length; category++) {
            assertThat(table.next(bits)).isEqualTo(category);
        }
    }

    @Test
    void bitsThatAreNoCodeAreNone() {
        assertThat(ofBrightness().next(JpegBits.reader("1111111111111111"))).isEqualTo(-1);
        assertThat(HuffmanTable.EMPTY.shortest()).isZero();
    }

    /** Three codes of one bit. */
    @Test
    void moreCodesThanFitAreRefused() {
        int[] counts = new int[16];
        counts[0] = 3;
        assertThatThrownBy(() -> new HuffmanTable(counts, new byte[] {1, 2, 3}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
