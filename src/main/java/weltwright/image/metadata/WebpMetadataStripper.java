package weltwright.image.metadata;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/** Removes all chunks of a WebP file that its picture is not decoded from. RFC 9649, section 2. */
final class WebpMetadataStripper {
    private static final int HEADER = 12;
    private static final int CHUNK_HEADER = 8;
    private static final Set<String> KEPT = Set.of("VP8 ", "VP8L", "VP8X", "ALPH", "ANIM", "ANMF");

    /** Flag of the chunk VP8X for a colour profile. */
    private static final int PROFILE = 0x20;

    private static final int EXIF = 0x08;
    private static final int XMP = 0x04;

    private WebpMetadataStripper() {}

    /**
     * Returns a copy of the file without the other chunks. A file in the simple format, which has a single chunk, has
     * no place for Exif data and gets none.
     *
     * @param exif the Exif block to insert, empty for none
     */
    static byte[] strip(byte[] file, byte[] exif) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream(file.length);
        ByteBuffer chunks = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
        boolean isExtended = false;
        int at = HEADER;
        while (at + CHUNK_HEADER <= file.length) {
            String kind = new String(file, at, 4, StandardCharsets.ISO_8859_1);
            long length = chunks.getInt(at + 4) & 0xFFFF_FFFFL;
            int end = (int) Math.min(at + CHUNK_HEADER + length + (length & 1), file.length);
            if (KEPT.contains(kind)) {
                byte[] chunk = new byte[end - at];
                chunks.get(at, chunk);
                if (kind.equals("VP8X") && chunk.length > CHUNK_HEADER) {
                    isExtended = true;
                    int flags = chunk[CHUNK_HEADER] & ~(PROFILE | EXIF | XMP);
                    chunk[CHUNK_HEADER] = (byte) (exif.length > 0 ? flags | EXIF : flags);
                }
                kept.writeBytes(chunk);
            }
            at = end;
        }
        if (isExtended && exif.length > 0) {
            kept.writeBytes(chunk("EXIF", exif));
        }
        byte[] whole = kept.toByteArray();
        ByteBuffer stripped = ByteBuffer.allocate(HEADER + whole.length).order(ByteOrder.LITTLE_ENDIAN);
        stripped.put(file, 0, 4).putInt(4 + whole.length).put(file, 8, 4).put(whole);
        return stripped.array();
    }

    private static byte[] chunk(String kind, byte[] data) {
        ByteBuffer chunk = ByteBuffer.allocate(CHUNK_HEADER + data.length + (data.length & 1))
                .order(ByteOrder.LITTLE_ENDIAN);
        return chunk.put(kind.getBytes(StandardCharsets.US_ASCII))
                .putInt(data.length)
                .put(data)
                .array();
    }
}
