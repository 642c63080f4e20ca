package weltwright.image.format;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Checks a PNG file: the checksums and order of its chunks, and that its data decompress to a picture of the stated
 * size. PNG 1.2, sections 2 to 4 and 9.
 */
final class PngValidator {
    private static final int SIGNATURE = 8;
    /** Bytes of a chunk besides its data: length, type and checksum. */
    private static final int CHUNK_OVERHEAD = 12;

    private static final int COLOUR_PALETTE = 3;

    /**
     * First row, first column, row step and column step of the seven passes of Adam7 interlacing: PNG 1.2, section 2.6.
     */
    private static final int[][] ADAM7_PASSES = {
        {0, 0, 8, 8}, {0, 4, 8, 8}, {4, 0, 8, 4}, {0, 2, 4, 4}, {2, 0, 4, 2}, {0, 1, 2, 2}, {1, 0, 2, 1}
    };

    private static final int[][] SINGLE_PASS = {{0, 0, 1, 1}};

    private final byte[] file;
    private final ByteBuffer chunks;
    private final Inflater inflater = new Inflater();
    private final byte[] unpacked = new byte[1 << 16];
    private int pass;
    private int row;
    private long bytesLeftInRow;

    private int width;
    private int height;
    private int bitsPerPixel;
    private int[][] passes = SINGLE_PASS;

    private PngValidator(byte[] file) {
        this.file = file;
        this.chunks = ByteBuffer.wrap(file);
    }

    /**
     * Checks a file.
     *
     * @throws IllegalArgumentException where it is damaged
     */
    static void check(byte[] file) {
        PngValidator check = new PngValidator(file);
        try {
            check.run();
        } catch (DataFormatException | IndexOutOfBoundsException e) {
            throw new IllegalArgumentException("damaged data", e);
        } finally {
            check.inflater.end();
        }
    }

    private void run() throws DataFormatException {
        int at = SIGNATURE;
        String before = "";
        boolean hasPalette = false;
        while (true) {
            int length = chunks.getInt(at);
            String kind = new String(file, at + 4, 4, StandardCharsets.ISO_8859_1);
            CRC32 checksum = new CRC32();
            require(length >= 0 && length <= file.length - at - CHUNK_OVERHEAD, "a chunk beyond the end");
            checksum.update(file, at + 4, 4 + length);
            require((int) checksum.getValue() == chunks.getInt(at + 8 + length), "a checksum");
            switch (kind) {
                case "IHDR" -> header(at + 8, length, before);
                case "PLTE" -> {
                    require(!hasPalette && length > 0 && length % 3 == 0 && length <= 768, "the palette");
                    hasPalette = true;
                }
                case "IDAT" -> {
                    require(!before.isEmpty() && (hasPalette || !usesPalette()), "no palette");
                    data(at + 8, length);
                }
                case "IEND" -> {
                    require(inflater.finished() && pass == passes.length, "too little data");
                    return;
                }
                default -> {}
            }
            before = kind;
            at += CHUNK_OVERHEAD + length;
        }
    }

    private boolean usesPalette() {
        return file[SIGNATURE + 8 + 9] == COLOUR_PALETTE;
    }

    private void header(int at, int length, String before) {
        require(length == 13 && before.isEmpty(), "the header");
        width = chunks.getInt(at);
        height = chunks.getInt(at + 4);
        int depth = file[at + 8];
        int colour = file[at + 9];
        Set<Integer> depths = switch (colour) {
            case 0 -> Set.of(1, 2, 4, 8, 16);
            case COLOUR_PALETTE -> Set.of(1, 2, 4, 8);
            case 2, 4, 6 -> Set.of(8, 16);
            default -> Set.of();
        };
        require(width > 0 && height > 0 && depths.contains(depth), "the kind of colours");
        require(file[at + 10] == 0 && file[at + 11] == 0 && file[at + 12] >= 0 && file[at + 12] <= 1, "the packing");
        bitsPerPixel = depth * (colour == 2 ? 3 : colour == 4 ? 2 : colour == 6 ? 4 : 1);
        passes = file[at + 12] == 1 ? ADAM7_PASSES : SINGLE_PASS;
        row = -1;
        nextRow();
    }

    private void data(int at, int length) throws DataFormatException {
        inflater.setInput(file, at, length);
        int count;
        while ((count = inflater.inflate(unpacked)) > 0) {
            rows(count);
        }
        require(!inflater.needsDictionary(), "a dictionary");
    }

    /** Counts decompressed bytes row by row. The first byte of a row is its filter type, 0 to 4. */
    private void rows(int count) {
        int at = 0;
        while (at < count) {
            require(pass < passes.length, "too much data");
            if (bytesLeftInRow < 0) {
                require(unpacked[at] >= 0 && unpacked[at] <= 4, "a filter");
                at++;
                bytesLeftInRow = (rowPixels() * bitsPerPixel + 7) / 8;
            }
            long taken = Math.min(bytesLeftInRow, count - at);
            at += (int) taken;
            bytesLeftInRow -= taken;
            if (bytesLeftInRow == 0) {
                nextRow();
            }
        }
    }

    private long rowPixels() {
        return pixels(width, passes[pass][1], passes[pass][3]);
    }

    private void nextRow() {
        bytesLeftInRow = -1;
        row++;
        while (pass < passes.length && (rowPixels() == 0 || row >= pixels(height, passes[pass][0], passes[pass][2]))) {
            pass++;
            row = 0;
        }
    }

    private static long pixels(int of, int first, int step) {
        return Math.max(0, (of - first + step - 1) / step);
    }

    private static void require(boolean isRight, String what) {
        if (!isRight) {
            throw new IllegalArgumentException(what);
        }
    }
}
