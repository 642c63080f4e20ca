package weltwright.image.format;

/**
 * The bits of one stretch of a JPEG scan, between markers: ITU-T T.81, sections F.1.2.3 (stuffed bytes) and F.2.2.5.
 */
final class JpegBitReader {
    private final byte[] file;
    private final int end;
    private int at;
    private long buffer;
    private int held;
    private int beyond;

    JpegBitReader(byte[] file, int from, int end) {
        this.file = file;
        this.at = from;
        this.end = end;
    }

    /** The next so many bits, at most 16, as a number; 0 in place of bits beyond the end. */
    int take(int count) {
        int bits = peek(count);
        held -= count;
        return bits;
    }

    /** The same, left where they are. */
    int peek(int count) {
        if (held < count) {
            fill();
        }
        return (int) (buffer >>> (held - count)) & (1 << count) - 1;
    }

    void skip(int count) {
        held -= count;
    }

    /** Whether more bits were taken than there are. */
    boolean isOverrun() {
        return beyond > held;
    }

    /** How many bits are left. */
    long left() {
        long bits = (long) held - beyond;
        while (at < end) {
            nextByte();
            bits += 8;
        }
        return bits;
    }

    private void fill() {
        while (held <= 40) {
            int next = 0;
            if (at < end) {
                next = nextByte();
            } else {
                beyond += 8;
            }
            buffer = buffer << 8 | next;
            held += 8;
        }
    }

    private int nextByte() {
        int next = file[at++] & 0xFF;
        if (next == 0xFF) {
            // A byte of ones is followed by one of zeros, and may be preceded by more ones that say nothing.
            while (at < end && file[at] == (byte) 0xFF) {
                at++;
            }
            at++;
        }
        return next;
    }
}
