package weltwright.image.format;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/**
 * Reads the entropy-coded data of one scan of a JPEG file without decoding the picture. Checks that each Huffman code
 * is defined, that each coefficient lies inside its block, and that the data end with the last block.
 *
 * <p>Follows ITU-T T.81, annex F (sequential) and annex G (progressive). An MCU is the minimum coded unit of section
 * A.2: a group of blocks of all components in an interleaved scan, a single block in a scan of one component.
 */
final class JpegScanValidator {
    /**
     * The greatest absolute value of a DC coefficient: 8 times 128 levels (T.81, section A.3.3). The rest allows for
     * rounding by the encoder and is chosen by eye.
     */
    private static final int GREATEST_DC = 1400;

    /**
     * The greatest category of a DC difference that is accepted. Table F.1 of T.81 ends at 11 for 8-bit samples; one
     * more is accepted, since a picture may still be decoded.
     */
    private static final int GREATEST_DC_CATEGORY = 12;

    /**
     * A component of the scan with the tables that its data refer to.
     *
     * @param dc table of the DC coefficients; empty where the scan has none
     * @param ac table of the AC coefficients; empty where the scan has none
     * @param step quantization step of the DC coefficients
     */
    record ScanComponent(JpegFrameHeader.Component component, HuffmanTable dc, HuffmanTable ac, int step) {}

    /**
     * The result of reading the data between two restart markers.
     *
     * @param mcus how many MCUs were read without a fault
     * @param ranOut whether the data ended inside an MCU
     * @param bitsLeft number of bits after the last MCU
     */
    record SegmentResult(int mcus, boolean ranOut, long bitsLeft) {}

    private final JpegFrameHeader frame;
    private final List<ScanComponent> parts;
    private final int spectralStart;
    private final int spectralEnd;
    private final boolean isRefinement;
    private final int pointTransform;
    private final int[] dcPredictors;
    private final int[][] dcOfBlocks;
    private int eobRun;

    JpegScanValidator(
            JpegFrameHeader frame,
            List<ScanComponent> parts,
            int spectralStart,
            int spectralEnd,
            int highBit,
            int lowBit) {
        this.frame = frame;
        this.parts = parts;
        this.spectralStart = spectralStart;
        this.spectralEnd = spectralEnd;
        this.isRefinement = highBit > 0;
        this.pointTransform = lowBit;
        this.dcPredictors = new int[parts.size()];
        this.dcOfBlocks = parts.stream()
                .map(part -> new int
                        [hasDc()
                                ? frame.mcusAcross()
                                        * part.component().h()
                                        * frame.mcusDown()
                                        * part.component().v()
                                : 0])
                .toArray(int[][]::new);
    }

    JpegFrameHeader frame() {
        return frame;
    }

    private boolean hasDc() {
        return spectralStart == 0 && !isRefinement;
    }

    /**
     * Returns the first row of MCUs from which the levels of a component are shifted; empty where there is none. To be
     * called after the whole scan was read.
     */
    OptionalInt shiftedRow() {
        int row = Integer.MAX_VALUE;
        for (int p = 0; p < parts.size() && hasDc(); p++) {
            JpegFrameHeader.Component component = parts.get(p).component();
            row = Math.min(
                    row,
                    DcShiftDetector.firstRow(
                                    dcOfBlocks[p],
                                    frame.mcusAcross() * component.h(),
                                    component.blocksAcross(),
                                    component.blocksDown(),
                                    isNonInterleaved() ? 1 : component.v(),
                                    parts.get(p).step() << pointTransform)
                            .orElse(row));
        }
        return row == Integer.MAX_VALUE ? OptionalInt.empty() : OptionalInt.of(row);
    }

    /** Whether the scan holds one component; its MCUs are then single blocks (T.81, section A.2.2). */
    private boolean isNonInterleaved() {
        return parts.size() == 1;
    }

    int mcusAcross() {
        return isNonInterleaved() ? parts.get(0).component().blocksAcross() : frame.mcusAcross();
    }

    int mcusDown() {
        return isNonInterleaved() ? parts.get(0).component().blocksDown() : frame.mcusDown();
    }

    int mcuWidthPx() {
        return isNonInterleaved() ? 8 * frame.maxH() / parts.get(0).component().h() : 8 * frame.maxH();
    }

    int mcuHeightPx() {
        return isNonInterleaved() ? 8 * frame.maxV() / parts.get(0).component().v() : 8 * frame.maxV();
    }

    /** Returns the least number of bits that an MCU can take, at least 8. Fewer bits after the last MCU are padding. */
    int leastMcuBits() {
        int bits = 0;
        for (ScanComponent part : parts) {
            int blocks = isNonInterleaved()
                    ? 1
                    : part.component().h() * part.component().v();
            bits += blocks * (part.dc().shortest() + part.ac().shortest());
        }
        return Math.max(8, bits);
    }

    /**
     * Reads MCUs after a start or restart marker, up to the first fault.
     *
     * @param fromMcu number of the first MCU
     * @param toMcu number of the MCU after the last one
     */
    SegmentResult read(JpegBitReader bits, int fromMcu, int toMcu) {
        Arrays.fill(dcPredictors, 0);
        eobRun = 0;
        for (int mcu = fromMcu; mcu < toMcu; mcu++) {
            boolean isRight = mcu(bits, mcu);
            if (!isRight || bits.isOverrun()) {
                return new SegmentResult(mcu - fromMcu, bits.isOverrun(), 0);
            }
        }
        return new SegmentResult(toMcu - fromMcu, false, bits.remaining());
    }

    private boolean mcu(JpegBitReader bits, int mcu) {
        int column = mcu % mcusAcross();
        int row = mcu / mcusAcross();
        for (int p = 0; p < parts.size(); p++) {
            JpegFrameHeader.Component component = parts.get(p).component();
            int stride = frame.mcusAcross() * component.h();
            if (isNonInterleaved()) {
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
        ScanComponent part = parts.get(p);
        if (!frame.progressive()) {
            return dc(bits, p, index) && ac(bits, part.ac());
        }
        if (spectralStart == 0) {
            if (isRefinement) {
                bits.take(1);
                return true;
            }
            return dc(bits, p, index);
        }
        long[] nonzero = part.component().nonzero();
        return isRefinement ? acRefined(bits, part.ac(), nonzero, index) : acFirst(bits, part.ac(), nonzero, index);
    }

    private boolean dc(JpegBitReader bits, int p, int index) {
        int size = parts.get(p).dc().next(bits);
        if (size < 0 || size > GREATEST_DC_CATEGORY) {
            return false;
        }
        if (size > 0) {
            int value = bits.take(size);
            dcPredictors[p] += value < 1 << (size - 1) ? value - (1 << size) + 1 : value;
        }
        int step = parts.get(p).step() << pointTransform;
        dcOfBlocks[p][index] = dcPredictors[p] * step;
        return Math.abs(dcPredictors[p]) * step <= GREATEST_DC + step;
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
        if (eobRun > 0) {
            eobRun--;
            return true;
        }
        for (int k = spectralStart; k <= spectralEnd; k++) {
            int symbol = table.next(bits);
            if (symbol < 0) {
                return false;
            }
            int size = symbol & 15;
            int run = symbol >> 4;
            if (size == 0 && run < 15) {
                eobRun = (1 << run) - 1 + (run > 0 ? bits.take(run) : 0);
                return true;
            }
            k += run;
            if (k > spectralEnd) {
                return false;
            }
            if (size > 0) {
                bits.take(size);
                nonzero[index] |= 1L << k;
            }
        }
        return true;
    }

    private boolean acRefined(JpegBitReader bits, HuffmanTable table, long[] nonzero, int index) {
        long before = nonzero[index];
        int k = spectralStart;
        if (eobRun == 0) {
            for (; k <= spectralEnd; k++) {
                int symbol = table.next(bits);
                if (symbol < 0 || (symbol & 15) > 1) {
                    return false;
                }
                int run = symbol >> 4;
                boolean isNew = (symbol & 15) == 1;
                if (!isNew && run < 15) {
                    eobRun = (1 << run) + (run > 0 ? bits.take(run) : 0);
                    break;
                }
                if (isNew) {
                    bits.take(1);
                }
                for (; k <= spectralEnd; k++) {
                    if ((before >> k & 1) != 0) {
                        bits.take(1);
                    } else if (--run < 0) {
                        break;
                    }
                }
                if (isNew) {
                    if (k > spectralEnd) {
                        return false;
                    }
                    nonzero[index] |= 1L << k;
                }
            }
        }
        if (eobRun > 0) {
            for (; k <= spectralEnd; k++) {
                if ((before >> k & 1) != 0) {
                    bits.take(1);
                }
            }
            eobRun--;
        }
        return true;
    }
}
