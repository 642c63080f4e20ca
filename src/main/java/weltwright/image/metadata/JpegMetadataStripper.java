package weltwright.image.metadata;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import weltwright.image.format.JpegMarkers;

/**
 * Removes all segments of a JPEG file that its picture is not decoded from. Keeps tables, frames, scans, the JFIF
 * segment without its thumbnail, and the Adobe segment, which states the colour transform. Sources: ITU-T T.81, annex
 * B; JFIF 1.02; Adobe Technical Note 5116.
 *
 * <p>Bytes between segments and after the end of the image are dropped, as decoders skip them. A file that is cut off
 * is copied up to where it ends.
 */
public final class JpegMetadataStripper {
    private static final int START_OF_IMAGE = 0xD8;
    private static final int END_OF_IMAGE = 0xD9;
    private static final int START_OF_SCAN = 0xDA;
    private static final int JFIF = 0xE0;
    private static final int EXIF = 0xE1;
    private static final int ADOBE = 0xEE;

    private static final byte[] JFIF_NAME = "JFIF\0".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] EXIF_NAME = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] ADOBE_NAME = "Adobe".getBytes(StandardCharsets.US_ASCII);

    /** Length of a JFIF segment without thumbnail: name, version, unit, densities, and a thumbnail size of 0 by 0. */
    private static final int JFIF_LENGTH = 14;

    private static final int ADOBE_LENGTH = 12;

    private final byte[] file;
    private final ByteArrayOutputStream kept;

    private JpegMetadataStripper(byte[] file) {
        this.file = file;
        this.kept = new ByteArrayOutputStream(file.length);
    }

    /**
     * Returns a copy of the file without the other segments.
     *
     * @param exif the Exif block to insert, empty for none
     */
    static byte[] strip(byte[] file, byte[] exif) {
        JpegMetadataStripper stripper = new JpegMetadataStripper(file);
        stripper.marker(START_OF_IMAGE);
        if (exif.length > 0) {
            stripper.segment(EXIF, EXIF_NAME, exif);
        }
        stripper.run();
        return stripper.kept.toByteArray();
    }

    private void run() {
        int at = JpegMarkers.next(file, 2);
        while (at < file.length) {
            int marker = file[at] & 0xFF;
            if (marker == END_OF_IMAGE) {
                marker(marker);
                return;
            }
            if (!JpegMarkers.hasLength(marker)) {
                at = JpegMarkers.next(file, at + 1);
                continue;
            }
            int length = JpegMarkers.length(file, at + 1);
            if (length < 2 || at + 1 + length > file.length) {
                return; // the file is cut off
            }
            int from = at + 3;
            int to = at + 1 + length;
            keep(marker, from, to);
            if (marker == START_OF_SCAN) {
                int end = JpegMarkers.endOfScan(file, to);
                kept.write(file, to, end - to);
                to = end;
            }
            at = JpegMarkers.next(file, to);
        }
    }

    private void keep(int marker, int from, int to) {
        boolean isTableOrFrame =
                (marker >= 0xC0 && marker <= 0xCF && marker != 0xC8) || (marker >= 0xDA && marker <= 0xDF);
        if (isTableOrFrame) {
            segment(marker, Arrays.copyOfRange(file, from, to));
        } else if (marker == JFIF && to - from >= JFIF_LENGTH && begins(from, JFIF_NAME)) {
            segment(marker, Arrays.copyOfRange(file, from, from + JFIF_LENGTH - 2), new byte[2]);
        } else if (marker == ADOBE && to - from >= ADOBE_LENGTH && begins(from, ADOBE_NAME)) {
            segment(marker, Arrays.copyOfRange(file, from, from + ADOBE_LENGTH));
        }
    }

    private boolean begins(int from, byte[] name) {
        return Arrays.equals(file, from, from + name.length, name, 0, name.length);
    }

    private void marker(int marker) {
        kept.write(0xFF);
        kept.write(marker);
    }

    private void segment(int marker, byte[]... parts) {
        marker(marker);
        int length = 2 + Arrays.stream(parts).mapToInt(part -> part.length).sum();
        kept.write(length >> 8);
        kept.write(length);
        for (byte[] part : parts) {
            kept.writeBytes(part);
        }
    }
}
