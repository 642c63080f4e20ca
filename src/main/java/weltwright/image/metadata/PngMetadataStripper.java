package weltwright.image.metadata;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.CRC32;

/** A PNG file's chunks that its picture is decoded from, and no others: PNG 1.2, sections 3 and 4. */
final class PngMetadataStripper {
    private static final int SIGNATURE = 8;
    private static final int AROUND = 12;
    private static final Set<String> KEPT = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

    private PngMetadataStripper() {}

    /** @param exif the Exif block to put in (PNG's extension 1.5.0, eXIf); empty for none */
    static byte[] strip(byte[] file, byte[] exif) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream(file.length);
        kept.write(file, 0, SIGNATURE);
        ByteBuffer chunks = ByteBuffer.wrap(file);
        int at = SIGNATURE;
        while (at + AROUND <= file.length) {
            long length = chunks.getInt(at) & 0xFFFF_FFFFL;
            long end = at + AROUND + length;
            if (end > file.length) {
                // Cut off: what is there of the picture stays, as it is.
                end = file.length;
            }
            String kind = new String(file, at + 4, 4, StandardCharsets.ISO_8859_1);
            if (KEPT.contains(kind)) {
                kept.write(file, at, (int) end - at);
            }
            if (kind.equals("IHDR") && exif.length > 0) {
                kept.writeBytes(chunk("eXIf", exif));
            }
            if (kind.equals("IEND")) {
                break;
            }
            at = (int) end;
        }
        return kept.toByteArray();
    }

    private static byte[] chunk(String kind, byte[] data) {
        ByteBuffer chunk = ByteBuffer.allocate(AROUND + data.length);
        chunk.putInt(data.length).put(kind.getBytes(StandardCharsets.US_ASCII)).put(data);
        CRC32 checksum = new CRC32();
        checksum.update(chunk.array(), 4, 4 + data.length);
        return chunk.putInt((int) checksum.getValue()).array();
    }
}
