package weltwright.image.format;

import java.util.Arrays;

/** A Huffman table of a JPEG file, expanded to a lookup by 16 bits: ITU-T T.81, annex C and section F.2.2.3. */
final class HuffmanTable {
    private static final int LONGEST = 16;

    /** A table without codes. */
    static final HuffmanTable EMPTY = new HuffmanTable(new int[LONGEST], new byte[0]);

    /**
     * For each value of the next 16 bits: the symbol in the low byte and the length of its code in the high byte; 0
     * where no code matches.
     */
    private final short[] byBits = new short[1 << LONGEST];

    private final int shortest;

    /**
     * @param counts number of codes of each length, from 1 to 16 bits
     * @param symbols the symbols in the order of their codes
     * @throws IllegalArgumentException where there are more codes than the lengths allow
     */
    HuffmanTable(int[] counts, byte[] symbols) {
        int code = 0;
        int next = 0;
        int first = 0;
        for (int length = 1; length <= LONGEST; length++) {
            for (int i = 0; i < counts[length - 1]; i++) {
                int from = code << (LONGEST - length);
                int to = (code + 1) << (LONGEST - length);
                if (to > byBits.length || next >= symbols.length) {
                    throw new IllegalArgumentException("too many Huffman codes");
                }
                Arrays.fill(byBits, from, to, (short) (length << 8 | (symbols[next] & 0xFF)));
                first = first == 0 ? length : first;
                code++;
                next++;
            }
            code <<= 1;
        }
        shortest = first;
    }

    /** Returns the length of the shortest code in bits; 0 for a table without codes. */
    int shortest() {
        return shortest;
    }

    /** Reads the next symbol; -1 where the bits match no code. */
    int next(JpegBitReader bits) {
        int entry = byBits[bits.peek(LONGEST)];
        if (entry == 0) {
            return -1;
        }
        bits.skip(entry >> 8);
        return entry & 0xFF;
    }
}
