package weltwright.image.format;

/** Where the parts of a JPEG file begin and end: ITU-T T.81, section B.1.1. */
public final class JpegMarkers {
    private JpegMarkers() {}

    /** The place of the second byte of the next marker from a place on; the file's length where there is none. */
    public static int next(byte[] file, int from) {
        for (int at = from; at + 1 < file.length; at++) {
            int second = file[at + 1] & 0xFF;
            if (file[at] == (byte) 0xFF && second != 0 && second != 0xFF) {
                return at + 1;
            }
        }
        return file.length;
    }

    /** Whether what follows a marker is a segment that begins with its own length. */
    public static boolean hasLength(int marker) {
        return marker != 0x01 && !(marker >= 0xD0 && marker <= 0xD9);
    }

    /** The length of a segment, itself included, from the place where it stands; -1 where the file ends before. */
    public static int length(byte[] file, int at) {
        return at + 1 < file.length ? (file[at] & 0xFF) << 8 | (file[at + 1] & 0xFF) : -1;
    }

    /** The place of the marker that ends a scan's data; restart markers are part of it. */
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
