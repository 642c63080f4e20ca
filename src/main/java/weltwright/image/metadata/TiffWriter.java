package weltwright.image.metadata;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Lays out a TIFF structure, big-endian: a header, a main directory, an Exif directory, and the data of both. TIFF 6.0,
 * section 2; so is an Exif block (Exif 2.32, section 4.5).
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

    /** A tag of the main directory; of a type that is a whole number. */
    TiffWriter main(int tag, int type, long... values) {
        main.put(tag, value(type, values));
        return this;
    }

    /** A tag of the main directory that is plain bytes, of a type one byte long. */
    TiffWriter main(int tag, int type, byte[] data) {
        main.put(tag, new Value(type, data.length, data));
        return this;
    }

    /** A tag of the Exif directory; a {@link #RATIONAL} has two numbers. */
    TiffWriter exif(int tag, int type, long... values) {
        exif.put(tag, value(type, values));
        return this;
    }

    /** Strips or tiles of a picture, and the tag of the main directory that says where each of them begins. */
    TiffWriter blocks(int tag, List<byte[]> blocks) {
        this.blocksTag = tag;
        this.blocks = blocks;
        main.put(tag, value(LONG, new long[blocks.size()]));
        return this;
    }

    boolean isEmpty() {
        return main.isEmpty() && exif.isEmpty();
    }

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

    /** Of a directory and the data that its entries do not hold themselves. */
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

    /** TIFF wants data to begin at even places. */
    private static int even(int length) {
        return length + (length & 1);
    }
}
