package weltwright.image.format;

/**
 * Finds the markers and marker segments of a JPEG file: ITU-T T.81, section B.1.1. Offsets count bytes from the file's
 * first one.
 */
public final class JpegMarkers {
    private JpegMarkers() {}

    /**
     * Returns the offset of the second byte of the next marker at or after an offset; the file's length where there is
     * none.
     */
    public static int next(byte[] file, int from) {
        for (int at = from; at + 1 < file.length; at++) {
            int second = file[at + 1] & 0xFF;
            if (file[at] == (byte) 0xFF && second != 0 && second != 0xFF) {
                return at + 1;
            }
        }
        return file.length;
    }

    /** Whether a marker starts a segment with a length: all but TEM, RST0 to RST7, SOI and EOI. */
    public static boolean hasLength(int marker) {
        return marker != 0x01 && !(marker >= 0xD0 && marker <= 0xD9);
    }

    /**
     * Returns the 16-bit length of a segment, which includes its own two bytes; -1 where the file ends before.
     *
     * @param at offset of the length's first byte
     */
    public static int length(byte[] file, int at) {
        return at + 1 < file.length ? (file[at] & 0xFF) << 8 | (file[at + 1] & 0xFF) : -1;
    }

    /**
     * Returns the offset of the marker that ends a scan's data; the file's length where there is none. Restart markers
     * do not end a scan.
     */
    public static int endOfScan(byte[] file, int from) {
        for (int at = from; at + 1 < file.length; at++) {
            int second = file[at + 1] & 0xFF;
            boolean isMarker = file[at] == (byte) 0xFF && second != 0 && second != 0xFF;
            if (isMarker && !(second >= 0xD0 && second <= 0xD7)) {
                return at;
            }
        }
        return file.length;
    }
}
