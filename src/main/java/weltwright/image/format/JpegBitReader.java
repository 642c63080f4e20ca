package weltwright.image.format;

/**
 * Reads the bits of an entropy-coded segment, which is the part of a JPEG scan between two markers. Removes stuffed
 * bytes. ITU-T T.81, sections B.1.1.5 and F.2.2.5.
 */
final class JpegBitReader {
    private final byte[] file;
    private final int end;
    private int at;
    private long buffer;
    private int bufferedBits;
    private int paddingBits;

    JpegBitReader(byte[] file, int from, int end) {
        this.file = file;
        this.at = from;
        this.end = end;
    }

    /**
     * Reads the next bits as an unsigned number.
     *
     * @param count number of bits, at most 16; bits beyond the end of the segment are 0
     */
    int take(int count) {
        int bits = peek(count);
        bufferedBits -= count;
        return bits;
    }

    /** Returns the next bits as {@link #take} does, without consuming them. */
    int peek(int count) {
        if (bufferedBits < count) {
            refill();
        }
        return (int) (buffer >>> (bufferedBits - count)) & (1 << count) - 1;
    }

    void skip(int count) {
        bufferedBits -= count;
    }

    /** Whether more bits were consumed than the segment holds. */
    boolean isOverrun() {
        return paddingBits > bufferedBits;
    }

    /** Consumes the rest of the segment and returns its number of bits. */
    long remaining() {
        long bits = (long) bufferedBits - paddingBits;
        while (at < end) {
            nextByte();
            bits += 8;
        }
        return bits;
    }

    private void refill() {
        while (bufferedBits <= 40) {
            int next = 0;
            if (at < end) {
                next = nextByte();
            } else {
                paddingBits += 8;
            }
            buffer = buffer << 8 | next;
            bufferedBits += 8;
        }
    }

    private int nextByte() {
        int next = file[at++] & 0xFF;
        if (next == 0xFF) {
            // A byte 0xFF of data is followed by a stuffed 0; fill bytes 0xFF may come before a marker.
            while (at < end && file[at] == (byte) 0xFF) {
                at++;
            }
            at++;
        }
        return next;
    }
}
