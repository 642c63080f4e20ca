package weltwright.image.metadata;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes a big-endian TIFF structure: a header, a main directory, an Exif directory, and the data of both. An Exif
 * block has the same structure. TIFF 6.0, section 2; Exif 2.32, section 4.5.
 */
final class TiffWriter {
    static final int BYTE = 1;
    static final int SHORT = 3;
    static final int LONG = 4;
    static final int RATIONAL = 5;

    private static final int EXIF_DIRECTORY = 0x8769;
    private static final int HEADER = 8;
    private static final int ENTRY = 12;

    private final Map<Integer, Value> main = new TreeMap<>();
    private final Map<Integer, Value> exif = new TreeMap<>();
    private List<byte[]> blocks = List.of();
    private int blocksTag;

    private record Value(int type, int count, byte[] data) {}

    /**
     * Adds a tag to the main directory.
     *
     * @param type an integer type, or {@link #RATIONAL} with two numbers per value
     */
    TiffWriter main(int tag, int type, long... values) {
        main.put(tag, value(type, values));
        return this;
    }

    /**
     * Adds a tag of bytes to the main directory.
     *
     * @param type a type of one byte per value
     */
    TiffWriter main(int tag, int type, byte[] data) {
        main.put(tag, new Value(type, data.length, data));
        return this;
    }

    /**
     * Adds a tag to the Exif directory.
     *
     * @param type an integer type, or {@link #RATIONAL} with two numbers per value
     */
    TiffWriter exif(int tag, int type, long... values) {
        exif.put(tag, value(type, values));
        return this;
    }

    /**
     * Sets the strips or tiles of the picture.
     *
     * @param tag the tag of the main directory for their offsets
     */
    TiffWriter blocks(int tag, List<byte[]> blocks) {
        this.blocksTag = tag;
        this.blocks = blocks;
        main.put(tag, value(LONG, new long[blocks.size()]));
        return this;
    }

    boolean isEmpty() {
        return main.isEmpty() && exif.isEmpty();
    }

    /** Returns the whole structure. */
    byte[] bytes() {
        if (!exif.isEmpty()) {
            main.put(EXIF_DIRECTORY, value(LONG, 0));
        }
        int exifAt = HEADER + size(main);
        int blocksAt = exifAt + (exif.isEmpty() ? 0 : size(exif));
        if (!exif.isEmpty()) {
            main.put(EXIF_DIRECTORY, value(LONG, exifAt));
        }
        int end = blocksAt;
        List<Long> offsets = new ArrayList<>();
        for (byte[] block : blocks) {
            offsets.add((long) end);
            end += even(block.length);
        }
        if (!blocks.isEmpty()) {
            main.put(
                    blocksTag,
                    value(LONG, offsets.stream().mapToLong(Long::longValue).toArray()));
        }
        ByteBuffer tiff = ByteBuffer.allocate(end);
        tiff.putShort((short) 0x4D4D).putShort((short) 42).putInt(HEADER);
        directory(tiff, main);
        if (!exif.isEmpty()) {
            directory(tiff, exif);
        }
        for (int i = 0; i < blocks.size(); i++) {
            tiff.position(offsets.get(i).intValue()).put(blocks.get(i));
        }
        return tiff.array();
    }

    private static void directory(ByteBuffer tiff, Map<Integer, Value> tags) {
        int dataAt = tiff.position() + 2 + ENTRY * tags.size() + 4;
        tiff.putShort((short) tags.size());
        for (Map.Entry<Integer, Value> tag : tags.entrySet()) {
            Value value = tag.getValue();
            tiff.putShort(tag.getKey().shortValue())
                    .putShort((short) value.type())
                    .putInt(value.count());
            if (value.data().length <= 4) {
                tiff.put(value.data()).position(tiff.position() + 4 - value.data().length);
            } else {
                tiff.putInt(dataAt);
                tiff.put(dataAt, value.data());
                dataAt += even(value.data().length);
            }
        }
        tiff.putInt(0).position(dataAt);
    }

    /** Returns the bytes of a directory and of the values that do not fit into its entries. */
    private static int size(Map<Integer, Value> tags) {
        int data = tags.values().stream()
                .mapToInt(value -> value.data().length <= 4 ? 0 : even(value.data().length))
                .sum();
        return 2 + ENTRY * tags.size() + 4 + data;
    }

    private static Value value(int type, long... values) {
        int each = type == BYTE ? 1 : type == SHORT ? 2 : 4;
        ByteBuffer data = ByteBuffer.allocate(each * values.length);
        for (long value : values) {
            switch (each) {
                case 1 -> data.put((byte) value);
                case 2 -> data.putShort((short) value);
                default -> data.putInt((int) value);
            }
        }
        return new Value(type, type == RATIONAL ? values.length / 2 : values.length, data.array());
    }

    /** Rounds up to an even number: TIFF requires values to begin at even offsets. */
    private static int even(int length) {
        return length + (length & 1);
    }
}
