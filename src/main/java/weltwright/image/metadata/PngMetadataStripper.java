package weltwright.image.metadata;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.CRC32;

/** Removes all chunks of a PNG file that its picture is not decoded from. PNG 1.2, sections 3 and 4. */
final class PngMetadataStripper {
    private static final int SIGNATURE = 8;
    /** Bytes of a chunk besides its data: length, type and checksum. */
    private static final int CHUNK_OVERHEAD = 12;

    private static final Set<String> KEPT = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

    private PngMetadataStripper() {}

    /**
     * Returns a copy of the file without the other chunks. A chunk that is cut off is copied as far as it goes.
     *
     * @param exif the Exif block to insert (eXIf, PNG extensions 1.5.0), empty for none
     */
    static byte[] strip(byte[] file, byte[] exif) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream(file.length);
        kept.write(file, 0, SIGNATURE);
        ByteBuffer chunks = ByteBuffer.wrap(file);
        int at = SIGNATURE;
        while (at + CHUNK_OVERHEAD <= file.length) {
            long length = chunks.getInt(at) & 0xFFFF_FFFFL;
            int end = (int) Math.min(at + CHUNK_OVERHEAD + length, file.length);
            String kind = new String(file, at + 4, 4, StandardCharsets.ISO_8859_1);
            if (KEPT.contains(kind)) {
                kept.write(file, at, end - at);
            }
            if (kind.equals("IHDR") && exif.length > 0) {
                kept.writeBytes(chunk("eXIf", exif));
            }
            if (kind.equals("IEND")) {
                break;
            }
            at = end;
        }
        return kept.toByteArray();
    }

    private static byte[] chunk(String kind, byte[] data) {
        ByteBuffer chunk = ByteBuffer.allocate(CHUNK_OVERHEAD + data.length);
        chunk.putInt(data.length).put(kind.getBytes(StandardCharsets.US_ASCII)).put(data);
        CRC32 checksum = new CRC32();
        checksum.update(chunk.array(), 4, 4 + data.length);
        return chunk.putInt((int) checksum.getValue()).array();
    }
}
