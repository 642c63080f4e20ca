package weltwright.image.format;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Checks the length of a BMP file. Its pixels carry no checksum, but where bytes are missing between them, or there
 * twice, all that follow lie beside their places, and the file is not as long as it says. BITMAPFILEHEADER and
 * BITMAPINFOHEADER of the Windows GDI reference.
 */
final class BmpValidator {
    /** Offsets of fields from the start of the file, in bytes. The second header begins with its own length. */
    private static final int FILE_LENGTH_AT = 2;

    private static final int PIXELS_OFFSET_AT = 10;
    private static final int INFO_HEADER_AT = 14;
    private static final int WIDTH_AT = 18;
    private static final int HEIGHT_AT = 22;
    private static final int BITS_PER_PIXEL_AT = 28;
    private static final int COMPRESSION_AT = 30;

    /** Length of BITMAPINFOHEADER, the shortest second header that has these fields. */
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
        if (file.length < INFO_HEADER_AT + INFO_HEADER_BYTES
                || header.getInt(INFO_HEADER_AT) < INFO_HEADER_BYTES
                || header.getInt(COMPRESSION_AT) != 0
                || header.getInt(FILE_LENGTH_AT) == file.length) {
            return;
        }
        long rowBits = Math.abs((long) header.getInt(WIDTH_AT)) * header.getShort(BITS_PER_PIXEL_AT);
        long rowBytes = (rowBits + 31) / 32 * 4;
        long end = header.getInt(PIXELS_OFFSET_AT) + rowBytes * Math.abs((long) header.getInt(HEIGHT_AT));
        if (file.length < end || file.length > end + PADDING) {
            throw new IllegalArgumentException(file.length + " bytes, whose pixels end at " + end);
        }
    }
}
