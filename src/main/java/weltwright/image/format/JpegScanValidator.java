package weltwright.image.format;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/**
 * One scan of a JPEG file, read through without decoding its picture: whether each code is one, each coefficient has
 * its place, and the data end where the picture does. ITU-T T.81, annexes F (sequential) and G (progressive).
 */
final class JpegScanValidator {
    /** Eight times the greatest difference from middle grey, and some more for what rounding may add. */
    private static final int GREATEST_DC = 1400;

    private static final int DC_SYMBOLS = 12;

    /**
     * @param dc its table for first coefficients; empty where the scan has none
     * @param ac its table for the others; empty likewise
     * @param step the quantization step of its first coefficients
     */
    record Part(JpegFrameHeader.Component component, HuffmanTable dc, HuffmanTable ac, int step) {}

    /**
     * What one stretch of data came to.
     *
     * @param groups how many were read without fault
     * @param ranOut whether the data ended before the next one did
     * @param bitsLeft how many are left over behind the last one
     */
    record Read(int groups, boolean ranOut, long bitsLeft) {}

    private final JpegFrameHeader frame;
    private final List<Part> parts;
    private final int first;
    private final int last;
    private final boolean refines;
    private final int shift;
    private final int[] dcBefore;
    private final int[][] dcOfBlocks;
    private int endRun;

    JpegScanValidator(JpegFrameHeader frame, List<Part> parts, int first, int last, int high, int low) {
        this.frame = frame;
        this.parts = parts;
        this.first = first;
        this.last = last;
        this.refines = high > 0;
        this.shift = low;
        this.dcBefore = new int[parts.size()];
        this.dcOfBlocks = parts.stream()
                .map(part -> new int
                        [hasDc()
                                ? frame.groupsAcross()
                                        * part.component().h()
                                        * frame.groupsDown()
                                        * part.component().v()
                                : 0])
                .toArray(int[][]::new);
    }

    JpegFrameHeader frame() {
        return frame;
    }

    private boolean hasDc() {
        return first == 0 && !refines;
    }

    /** The first row of groups from which on a component is shifted in level, once all of the scan was read. */
    OptionalInt shiftedRow() {
        int row = Integer.MAX_VALUE;
        for (int p = 0; p < parts.size() && hasDc(); p++) {
            JpegFrameHeader.Component component = parts.get(p).component();
            row = Math.min(
                    row,
                    DcShiftDetector.firstRow(
                                    dcOfBlocks[p],
                                    frame.groupsAcross() * component.h(),
                                    component.blocksAcross(),
                                    component.blocksDown(),
                                    isOfOne() ? 1 : component.v(),
                                    parts.get(p).step() << shift)
                            .orElse(row));
        }
        return row == Integer.MAX_VALUE ? OptionalInt.empty() : OptionalInt.of(row);
    }

    /** A scan of one component is in its own blocks, any other in groups of all components' blocks. */
    private boolean isOfOne() {
        return parts.size() == 1;
    }

    int groupsAcross() {
        return isOfOne() ? parts.get(0).component().blocksAcross() : frame.groupsAcross();
    }

    int groupsDown() {
        return isOfOne() ? parts.get(0).component().blocksDown() : frame.groupsDown();
    }

    int groupWidthPx() {
        return isOfOne() ? 8 * frame.mostH() / parts.get(0).component().h() : 8 * frame.mostH();
    }

    int groupHeightPx() {
        return isOfOne() ? 8 * frame.mostV() / parts.get(0).component().v() : 8 * frame.mostV();
    }

    /** Fewer bits than this hold no group: what is left over behind the last group and is shorter is filling. */
    int leastGroupBits() {
        int bits = 0;
        for (Part part : parts) {
            int blocks = isOfOne() ? 1 : part.component().h() * part.component().v();
            bits += blocks * (part.dc().shortest() + part.ac().shortest());
        }
        return Math.max(8, bits);
    }

    /** Reads a stretch that begins anew, as behind a restart marker, as far as it is without fault. */
    Read read(JpegBitReader bits, int fromGroup, int toGroup) {
        Arrays.fill(dcBefore, 0);
        endRun = 0;
        for (int group = fromGroup; group < toGroup; group++) {
            boolean isRight = group(bits, group);
            if (!isRight || bits.isOverrun()) {
                return new Read(group - fromGroup, bits.isOverrun(), 0);
            }
        }
        return new Read(toGroup - fromGroup, false, bits.left());
    }

    private boolean group(JpegBitReader bits, int group) {
        int column = group % groupsAcross();
        int row = group / groupsAcross();
        for (int p = 0; p < parts.size(); p++) {
            JpegFrameHeader.Component component = parts.get(p).component();
            int stride = frame.groupsAcross() * component.h();
            if (isOfOne()) {
                if (!block(bits, p, row * stride + column)) {
                    return false;
                }
                continue;
            }
            for (int y = 0; y < component.v(); y++) {
                for (int x = 0; x < component.h(); x++) {
                    if (!block(bits, p, (row * component.v() + y) * stride + column * component.h() + x)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private boolean block(JpegBitReader bits, int p, int index) {
        Part part = parts.get(p);
        if (!frame.progressive()) {
            return dc(bits, p, index) && ac(bits, part.ac());
        }
        if (first == 0) {
            if (refines) {
                bits.take(1);
                return true;
            }
            return dc(bits, p, index);
        }
        long[] nonzero = part.component().nonzero();
        return refines ? acFiner(bits, part.ac(), nonzero, index) : acFirst(bits, part.ac(), nonzero, index);
    }

    private boolean dc(JpegBitReader bits, int p, int index) {
        int size = parts.get(p).dc().next(bits);
        if (size < 0 || size > DC_SYMBOLS) {
            return false;
        }
        if (size > 0) {
            int value = bits.take(size);
            dcBefore[p] += value < 1 << (size - 1) ? value - (1 << size) + 1 : value;
        }
        int step = parts.get(p).step() << shift;
        dcOfBlocks[p][index] = dcBefore[p] * step;
        return Math.abs(dcBefore[p]) * step <= GREATEST_DC + step;
    }

    private static boolean ac(JpegBitReader bits, HuffmanTable table) {
        for (int k = 1; k < 64; k++) {
            int symbol = table.next(bits);
            if (symbol < 0) {
                return false;
            }
            int size = symbol & 15;
            int run = symbol >> 4;
            if (size == 0) {
                if (run != 15) {
                    return true;
                }
                k += 15;
            } else {
                k += run;
                bits.take(size);
            }
            if (k > 63) {
                return false;
            }
        }
        return true;
    }

    private boolean acFirst(JpegBitReader bits, HuffmanTable table, long[] nonzero, int index) {
        if (endRun > 0) {
            endRun--;
            return true;
        }
        for (int k = first; k <= last; k++) {
            int symbol = table.next(bits);
            if (symbol < 0) {
                return false;
            }
            int size = symbol & 15;
            int run = symbol >> 4;
            if (size == 0 && run < 15) {
                endRun = (1 << run) - 1 + (run > 0 ? bits.take(run) : 0);
                return true;
            }
            k += run;
            if (k > last) {
                return false;
            }
            if (size > 0) {
                bits.take(size);
                nonzero[index] |= 1L << k;
            }
        }
        return true;
    }

    private boolean acFiner(JpegBitReader bits, HuffmanTable table, long[] nonzero, int index) {
        long before = nonzero[index];
        int k = first;
        if (endRun == 0) {
            for (; k <= last; k++) {
                int symbol = table.next(bits);
                if (symbol < 0 || (symbol & 15) > 1) {
                    return false;
                }
                int run = symbol >> 4;
                boolean isNew = (symbol & 15) == 1;
                if (!isNew && run < 15) {
                    endRun = (1 << run) + (run > 0 ? bits.take(run) : 0);
                    break;
                }
                if (isNew) {
                    bits.take(1);
                }
                for (; k <= last; k++) {
                    if ((before >> k & 1) != 0) {
                        bits.take(1);
                    } else if (--run < 0) {
                        break;
                    }
                }
                if (isNew) {
                    if (k > last) {
                        return false;
                    }
                    nonzero[index] |= 1L << k;
                }
            }
        }
        if (endRun > 0) {
            for (; k <= last; k++) {
                if ((before >> k & 1) != 0) {
                    bits.take(1);
                }
            }
            endRun--;
        }
        return true;
    }
}
