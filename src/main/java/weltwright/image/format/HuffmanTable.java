package weltwright.image.format;

import java.util.Arrays;

/** A table of Huffman codes of a JPEG file: ITU-T T.81, annex C and section F.2.2.3. */
final class HuffmanTable {
    private static final int LONGEST = 16;

    /** Of no codes. */
    static final HuffmanTable EMPTY = new HuffmanTable(new int[LONGEST], new byte[0]);

    /**
     * For each 16 bits that may come: the symbol, and the length of its code above it; 0 where there is no such code.
     */
    private final short[] byBits = new short[1 << LONGEST];

    private final int shortest;

    /**
     * @param counts how many codes there are of each length, from 1 to 16
     * @param symbols what they stand for, in the order of the codes
     * @throws IllegalArgumentException where there are more codes than fit
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
                    throw new IllegalArgumentException("a table of codes that are none");
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

    /** The length of its shortest code; 0 where it has none. */
    int shortest() {
        return shortest;
    }

    /** Takes the next symbol; -1 where the bits are no code. */
    int next(JpegBitReader bits) {
        int entry = byBits[bits.peek(LONGEST)];
        if (entry == 0) {
            return -1;
        }
        bits.skip(entry >> 8);
        return entry & 0xFF;
    }
}
