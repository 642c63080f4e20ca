package weltwright.image.format;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Checks the length of a BMP file. Its pixels carry no checksum, but where bytes are missing between them, or there
 * twice, all that follow lie beside their places, and the file is not as long as it says. BITMAPFILEHEADER and
 * BITMAPINFOHEADER of the Windows GDI reference.
 */
final class BmpValidator {
    /** Length of the file, start of the pixels, length of the second header and its fields, from the file's start. */
    private static final int FILE_LENGTH = 2;

    private static final int PIXELS_START = 10;
    private static final int HEADER_LENGTH = 14;
    private static final int WIDTH = 18;
    private static final int HEIGHT = 22;
    private static final int BITS_PER_PIXEL = 28;
    private static final int COMPRESSION = 30;

    /** Length of BITMAPINFOHEADER, the shortest header that has these fields. */
    private static final int INFO_HEADER_BYTES = 40;

    /** Bytes that a writer may append so that the length is a multiple of 4. */
    private static final int PADDING = 3;

    private BmpValidator() {}

    /**
     * Checks a file. It passes where it is as long as its header says, or ends with its pixels: some writers leave the
     * length out.
     *
     * @throws IllegalArgumentException where neither is so; pixels that are compressed are not checked
     */
    static void check(byte[] file) {
        ByteBuffer header = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
        if (file.length < HEADER_LENGTH + INFO_HEADER_BYTES
                || header.getInt(HEADER_LENGTH) < INFO_HEADER_BYTES
                || header.getInt(COMPRESSION) != 0
                || header.getInt(FILE_LENGTH) == file.length) {
            return;
        }
        long rowBits = Math.abs((long) header.getInt(WIDTH)) * header.getShort(BITS_PER_PIXEL);
        long rowBytes = (rowBits + 31) / 32 * 4;
        long end = header.getInt(PIXELS_START) + rowBytes * Math.abs((long) header.getInt(HEIGHT));
        if (file.length < end || file.length > end + PADDING) {
            throw new IllegalArgumentException(file.length + " bytes, whose pixels end at " + end);
        }
    }
}
