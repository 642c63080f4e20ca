package weltwright.image.format;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads a JPEG file as a decoder does, without computing the picture, and finds where its data are damaged.
 *
 * <p>Huffman codes follow each other without a gap, so after damage all codes are misread up to the next restart marker
 * or the end of the scan. An undefined code, or data that end too early or too late, show that there is damage, but not
 * where it begins. The damaged area therefore reaches over all MCUs between two restart markers; where the file is cut
 * off, only over those after the cut. Damage that leaves valid codes shifts the levels of all following blocks, which
 * {@link DcShiftDetector} finds where the shift is large. Damage that changes a single block only is not found.
 */
final class JpegValidator {
    private final byte[] file;
    private final int orientation;
    private final HuffmanTable[] dcTables = new HuffmanTable[4];
    private final HuffmanTable[] acTables = new HuffmanTable[4];
    private final int[] dcSteps = new int[4];
    private final int[][] codedTo = new int[256][];
    private @Nullable JpegFrameHeader frame;
    private int restartInterval;
    private int scans;
    private boolean regular = true;
    private Optional<PixelRectangle> damaged = Optional.empty();

    private JpegValidator(byte[] file, int orientation) {
        this.file = file;
        this.orientation = orientation;
    }

    /**
     * Checks a JPEG file.
     *
     * @param file the file without the segments that {@code JpegMetadataStripper} removes
     * @param orientation Exif orientation, 1 to 8
     * @throws IllegalArgumentException where a header or a table is damaged
     */
    static ImageDataIntegrity of(byte[] file, int orientation) {
        JpegValidator check = new JpegValidator(file, orientation);
        check.run();
        return new ImageDataIntegrity(check.regular, check.damaged);
    }

    private void run() {
        int at = JpegMarkers.next(file, 2);
        boolean ended = false;
        while (at < file.length && !ended) {
            int marker = file[at] & 0xFF;
            if (marker == 0xD9) {
                ended = true;
                continue;
            }
            int from = at + 3;
            int to = at + 1 + JpegMarkers.length(file, at + 1);
            if (to < from || to > file.length) {
                break; // The file was cut off within this segment, or the segment's length is damaged.
            }
            switch (marker) {
                case 0xDB -> quantization(from, to);
                case 0xC4 -> huffman(from, to);
                case 0xDD -> restartInterval = to - from < 2 ? 0 : JpegMarkers.length(file, from);
                case 0xDA -> to = scan(from, to);
                default -> {
                    if (marker >= 0xC0 && marker <= 0xCF) {
                        frame(marker, from, to);
                    }
                }
            }
            at = JpegMarkers.next(file, to);
        }
        if (scans == 0) {
            throw new IllegalArgumentException("no picture");
        }
        regular &= ended;
    }

    private void frame(int marker, int from, int to) {
        if (frame != null) {
            throw new IllegalArgumentException("two frames");
        }
        frame = JpegFrameHeader.of(marker, file, from, to);
    }

    private void quantization(int from, int to) {
        int at = from;
        while (at < to) {
            int bytes = (file[at] >> 4 & 15) == 0 ? 1 : 2;
            int table = file[at] & 15;
            if (table > 3 || at + 1 + 64 * bytes > to) {
                throw new IllegalArgumentException("a damaged table of steps");
            }
            dcSteps[table] = bytes == 1 ? file[at + 1] & 0xFF : JpegMarkers.length(file, at + 1);
            at += 1 + 64 * bytes;
        }
    }

    private void huffman(int from, int to) {
        int at = from;
        while (at < to) {
            int table = file[at] & 15;
            boolean isAc = (file[at] >> 4 & 15) == 1;
            int[] counts = new int[16];
            int all = 0;
            for (int i = 0; i < 16 && at + 1 + i < to; i++) {
                counts[i] = file[at + 1 + i] & 0xFF;
                all += counts[i];
            }
            if (table > 3 || (file[at] >> 4 & 15) > 1 || all > 256 || at + 17 + all > to) {
                throw new IllegalArgumentException("a damaged table of codes");
            }
            HuffmanTable read = new HuffmanTable(counts, Arrays.copyOfRange(file, at + 17, at + 17 + all));
            (isAc ? acTables : dcTables)[table] = read;
            at += 17 + all;
        }
    }

    /**
     * Reads a scan's header and data.
     *
     * @return the offset after the scan's data
     */
    private int scan(int from, int to) {
        int count = from < to ? file[from] & 0xFF : 0;
        JpegFrameHeader frame = this.frame;
        if (frame == null
                || to - from < 4 + 2 * count
                || count < 1
                || count > frame.components().size()) {
            throw new IllegalArgumentException("a damaged scan");
        }
        int spectralStart = file[from + 1 + 2 * count] & 0xFF;
        int spectralEnd = file[from + 2 + 2 * count] & 0xFF;
        int highBit = file[from + 3 + 2 * count] >> 4 & 15;
        int lowBit = file[from + 3 + 2 * count] & 15;
        if (frame.progressive()) {
            boolean isDc = spectralStart == 0 && spectralEnd == 0;
            if ((!isDc && (spectralStart == 0 || spectralEnd < spectralStart || spectralEnd > 63 || count > 1))
                    || lowBit > 13) {
                throw new IllegalArgumentException("a damaged scan");
            }
        } else {
            regular &= spectralStart == 0 && spectralEnd == 63 && highBit == 0 && lowBit == 0;
            spectralStart = 0;
            spectralEnd = 63;
            highBit = 0;
            lowBit = 0;
        }
        List<JpegScanValidator.ScanComponent> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int id = file[from + 1 + 2 * i] & 0xFF;
            JpegFrameHeader.Component component = frame.components().stream()
                    .filter(c -> c.id() == id)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("a scan of nothing"));
            parts.add(part(
                    component,
                    file[from + 2 + 2 * i],
                    spectralStart > 0 || !frame.progressive(),
                    spectralStart == 0 && highBit == 0));
            if (frame.progressive()) {
                checkProgression(id, spectralStart, spectralEnd, highBit, lowBit);
            }
        }
        scans++;
        int end = JpegMarkers.endOfScan(file, to);
        read(new JpegScanValidator(frame, parts, spectralStart, spectralEnd, highBit, lowBit), to, end);
        return end;
    }

    private JpegScanValidator.ScanComponent part(
            JpegFrameHeader.Component component, int tables, boolean needsAc, boolean needsDc) {
        HuffmanTable dc = needsDc ? table(dcTables, (tables >> 4) & 15) : HuffmanTable.EMPTY;
        HuffmanTable ac = needsAc ? table(acTables, tables & 15) : HuffmanTable.EMPTY;
        if (component.quantization() > 3) {
            throw new IllegalArgumentException("a scan without its table");
        }
        return new JpegScanValidator.ScanComponent(component, dc, ac, dcSteps[component.quantization()]);
    }

    private static HuffmanTable table(HuffmanTable[] tables, int index) {
        if (index >= tables.length || tables[index] == null) {
            throw new IllegalArgumentException("a scan without its table");
        }
        return tables[index];
    }

    /**
     * Checks that each bit of a coefficient is coded once, from the highest down (T.81, section G.1.1.1.2). Decoders
     * accept other orders, with a warning.
     */
    private void checkProgression(int component, int spectralStart, int spectralEnd, int highBit, int lowBit) {
        if (codedTo[component] == null) {
            codedTo[component] = new int[64];
            Arrays.fill(codedTo[component], -1);
        }
        int[] known = codedTo[component];
        regular &= spectralStart == 0 || known[0] >= 0;
        for (int k = spectralStart; k <= spectralEnd; k++) {
            regular &= highBit == Math.max(0, known[k]) && (highBit == 0 || highBit == lowBit + 1);
            known[k] = lowBit;
        }
    }

    /** Reads a scan's data segment by segment, between restart markers. */
    private void read(JpegScanValidator scan, int from, int end) {
        int mcus = scan.mcusAcross() * scan.mcusDown();
        int each = restartInterval > 0 ? restartInterval : mcus;
        int at = from;
        int restart = 0;
        for (int mcu = 0; mcu < mcus; mcu += each) {
            int to = endOfSegment(at, end);
            int until = Math.min(mcus, mcu + each);
            JpegScanValidator.SegmentResult read = scan.read(new JpegBitReader(file, at, to), mcu, until);
            boolean isLast = until == mcus;
            boolean markerIsRight = isLast ? to == end : to < end && (file[to + 1] & 0xFF) == 0xD0 + restart % 8;
            boolean complete = read.mcus() == until - mcu;
            if (!complete || (read.bitsLeft() >= scan.leastMcuBits() && !isPadding(at, to, read.bitsLeft()))) {
                regular = false;
                damage(scan, mcu, read, until, to == file.length);
            } else if (read.bitsLeft() >= 8) {
                regular = false;
            }
            if (!markerIsRight) {
                regular = false;
                if (!isLast || to != end) {
                    damage(scan, until, mcus);
                }
                return;
            }
            at = to + 2;
            restart++;
        }
        // DC prediction starts anew at a restart marker, so a shift ends there and is too short to be found.
        if (damaged.isEmpty() && each == mcus) {
            scan.shiftedRow().ifPresent(row -> damage(scan, row * scan.mcusAcross(), mcus));
        }
    }

    /** Whether the last bits are bytes of zeros or ones, as some cameras append them. */
    private boolean isPadding(int from, int to, long bits) {
        int bytes = (int) (bits / 8);
        for (int at = Math.max(from, to - bytes); at < to; at++) {
            if (file[at] != 0 && file[at] != (byte) 0xFF) {
                return false;
            }
        }
        return true;
    }

    /** Returns the offset of the next restart marker, or the end. */
    private int endOfSegment(int from, int end) {
        for (int at = from; at + 1 < end; at++) {
            int second = file[at + 1] & 0xFF;
            if (file[at] == (byte) 0xFF && second >= 0xD0 && second <= 0xD7) {
                return at;
            }
        }
        return end;
    }

    private void damage(
            JpegScanValidator scan, int from, JpegScanValidator.SegmentResult read, int until, boolean cutOff) {
        damage(scan, read.ranOut() && cutOff ? from + read.mcus() : from, until);
    }

    /**
     * Adds a range of MCUs to the damaged area: the rows from the first MCU to the last one; within a single row, only
     * the columns of the range.
     */
    private void damage(JpegScanValidator scan, int from, int until) {
        if (from >= until) {
            return;
        }
        JpegFrameHeader frame = scan.frame();
        int across = scan.mcusAcross();
        int top = from / across * scan.mcuHeightPx();
        int bottom = Math.min(frame.height(), ((until - 1) / across + 1) * scan.mcuHeightPx());
        boolean oneRow = from / across == (until - 1) / across;
        int left = oneRow ? from % across * scan.mcuWidthPx() : 0;
        int right = oneRow ? Math.min(frame.width(), ((until - 1) % across + 1) * scan.mcuWidthPx()) : frame.width();
        PixelRectangle area =
                new PixelRectangle(left, top, right, bottom).upright(orientation, frame.width(), frame.height());
        damaged = Optional.of(damaged.map(area::with).orElse(area));
    }
}
