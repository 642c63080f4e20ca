package weltwright.image.metadata;

import com.drew.metadata.Metadata;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Rewrites the first picture of a TIFF file with only the tags that it is decoded from. Tag numbers: TIFF 6.0, appendix
 * A; 347: TIFF Technical Note 2.
 */
final class TiffMetadataStripper {
    private static final int STRIP_OFFSETS = 273;
    private static final int STRIP_LENGTHS = 279;
    private static final int TILE_OFFSETS = 324;
    private static final int TILE_LENGTHS = 325;

    /** Tags that state how samples are stored, compressed and coloured. */
    private static final Set<Integer> KEPT = Set.of(
            254,
            256,
            257,
            258,
            259,
            262,
            266,
            277,
            278,
            STRIP_LENGTHS,
            284,
            292,
            293,
            317,
            320,
            322,
            323,
            TILE_LENGTHS,
            338,
            339,
            340,
            341,
            347,
            529,
            530,
            531,
            532);

    /** Bytes of a value by its type's number: TIFF 6.0, section 2. */
    private static final int[] SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8};

    /** The greatest number of strips or tiles that is accepted. Chosen by eye. */
    private static final int MOST_BLOCKS = 1_000_000;

    private TiffMetadataStripper() {}

    /**
     * Returns the rewritten file.
     *
     * @throws IllegalArgumentException where the file is damaged, or its picture lies in neither strips nor tiles
     */
    static byte[] strip(byte[] file, Metadata metadata) {
        try {
            ByteBuffer tiff = ByteBuffer.wrap(file);
            tiff.order(file[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
            return stripped(tiff, metadata);
        } catch (IndexOutOfBoundsException | BufferUnderflowException e) {
            throw new IllegalArgumentException("a directory or data beyond the end of the file", e);
        }
    }

    private static byte[] stripped(ByteBuffer tiff, Metadata metadata) {
        TiffWriter kept = new TiffWriter();
        int directory = tiff.getInt(4);
        int count = tiff.getShort(directory) & 0xFFFF;
        long[] offsets = null;
        long[] lengths = null;
        int offsetsTag = 0;
        for (int i = 0; i < count; i++) {
            int entry = directory + 2 + 12 * i;
            int tag = tiff.getShort(entry) & 0xFFFF;
            boolean isOffsets = tag == STRIP_OFFSETS || tag == TILE_OFFSETS;
            if (!isOffsets && !KEPT.contains(tag)) {
                continue;
            }
            int type = tiff.getShort(entry + 2) & 0xFFFF;
            if (isOffsets) {
                offsets = values(tiff, entry, type);
                offsetsTag = tag;
            } else {
                copy(tiff, entry, tag, type, kept);
                if (tag == STRIP_LENGTHS || tag == TILE_LENGTHS) {
                    lengths = values(tiff, entry, type);
                }
            }
        }
        if (offsets == null || lengths == null || offsets.length != lengths.length) {
            throw new IllegalArgumentException("no strips or tiles of known length");
        }
        kept.blocks(offsetsTag, blocks(tiff, offsets, lengths));
        return RetainedExif.addTo(kept, metadata).bytes();
    }

    private static void copy(ByteBuffer tiff, int entry, int tag, int type, TiffWriter kept) {
        if (type == TiffWriter.RATIONAL) {
            long[] parts = new long[2 * count(tiff, entry, type)];
            for (int i = 0; i < parts.length; i++) {
                parts[i] = tiff.getInt(tiff.getInt(entry + 8) + 4 * i);
            }
            kept.main(tag, type, parts);
        } else if (type == TiffWriter.SHORT || type == TiffWriter.LONG) {
            kept.main(tag, type, values(tiff, entry, type));
        } else if (type < SIZES.length && SIZES[type] == 1) {
            byte[] data = new byte[values(tiff, entry, type).length];
            tiff.get(at(tiff, entry, data.length), data);
            kept.main(tag, type, data);
        } else {
            throw new IllegalArgumentException("tag " + tag + " of type " + type);
        }
    }

    /** Reads the integers of a tag. */
    private static long[] values(ByteBuffer tiff, int entry, int type) {
        int count = count(tiff, entry, type);
        int size = SIZES[type];
        if (size > 4) {
            throw new IllegalArgumentException("integers of type " + type);
        }
        int at = at(tiff, entry, count * size);
        long[] values = new long[count];
        for (int i = 0; i < count; i++) {
            values[i] = switch (size) {
                case 1 -> tiff.get(at + i) & 0xFF;
                case 2 -> tiff.getShort(at + 2 * i) & 0xFFFF;
                default -> tiff.getInt(at + 4 * i) & 0xFFFF_FFFFL;
            };
        }
        return values;
    }

    /** Reads the number of a tag's values, which fit into the file. */
    private static int count(ByteBuffer tiff, int entry, int type) {
        int count = tiff.getInt(entry + 4);
        int size = type < SIZES.length ? SIZES[type] : 0;
        if (count < 0 || size == 0 || (long) count * size > tiff.limit() || count > MOST_BLOCKS) {
            throw new IllegalArgumentException("a tag of type " + type + " with " + count + " values");
        }
        return count;
    }

    private static int at(ByteBuffer tiff, int entry, int bytes) {
        return bytes <= 4 ? entry + 8 : tiff.getInt(entry + 8);
    }

    private static List<byte[]> blocks(ByteBuffer tiff, long[] offsets, long[] lengths) {
        List<byte[]> blocks = new ArrayList<>();
        long all = 0;
        for (int i = 0; i < offsets.length; i++) {
            all += lengths[i];
            if (offsets[i] + lengths[i] > tiff.limit() || all > tiff.limit()) {
                throw new IllegalArgumentException("a part of the picture beyond the end of the file");
            }
            byte[] block = new byte[(int) lengths[i]];
            tiff.get((int) offsets[i], block);
            blocks.add(block);
        }
        return blocks;
    }
}
