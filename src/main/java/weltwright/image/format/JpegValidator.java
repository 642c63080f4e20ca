package weltwright.image.format;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.image.metadata.JpegMetadataStripper;

/**
 * Reads through a JPEG file as a decoder does, without making a picture of it, and finds where its data are damaged.
 *
 * <p>Codes come one after the other without a gap, so behind damage all is read at the wrong place until the next
 * restart marker, if there is any. A code that is none shows that, but maybe long behind the damage; where codes fall
 * into step again, the data end too early or too late. So the damage may be anywhere between two restart markers; only
 * where a file is cut off, all before its end is right. Damage that leaves valid codes shifts the levels of all that
 * follows, which {@link DcShiftDetector} finds where it is large; what it does within one block stays unseen.
 */
final class JpegValidator {
    private final byte[] file;
    private final int orientation;
    private final HuffmanTable[] dcTables = new HuffmanTable[4];
    private final HuffmanTable[] acTables = new HuffmanTable[4];
    private final int[] firstSteps = new int[4];
    private final int[][] bitsKnown = new int[256][];
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
     * @param file without what {@link JpegMetadataStripper} takes out
     * @throws IllegalArgumentException where what says how the picture is stored is damaged
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
            firstSteps[table] = bytes == 1 ? file[at + 1] & 0xFF : JpegMarkers.length(file, at + 1);
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

    /** @return the place behind the scan's data */
    private int scan(int from, int to) {
        int count = file[from] & 0xFF;
        JpegFrameHeader frame = this.frame;
        if (frame == null
                || to - from < 4 + 2 * count
                || count < 1
                || count > frame.components().size()) {
            throw new IllegalArgumentException("a damaged scan");
        }
        int first = file[from + 1 + 2 * count] & 0xFF;
        int last = file[from + 2 + 2 * count] & 0xFF;
        int high = file[from + 3 + 2 * count] >> 4 & 15;
        int low = file[from + 3 + 2 * count] & 15;
        if (frame.progressive()) {
            boolean isDc = first == 0 && last == 0;
            if ((!isDc && (first == 0 || last < first || last > 63 || count > 1)) || low > 13) {
                throw new IllegalArgumentException("a damaged scan");
            }
        } else {
            regular &= first == 0 && last == 63 && high == 0 && low == 0;
            first = 0;
            last = 63;
            high = 0;
            low = 0;
        }
        List<JpegScanValidator.Part> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int id = file[from + 1 + 2 * i] & 0xFF;
            JpegFrameHeader.Component component = frame.components().stream()
                    .filter(c -> c.id() == id)
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("a scan of nothing"));
            parts.add(part(
                    component, file[from + 2 + 2 * i], first > 0 || !frame.progressive(), first == 0 && high == 0));
            if (frame.progressive()) {
                checkProgression(id, first, last, high, low);
            }
        }
        scans++;
        int end = JpegMarkers.endOfScan(file, to);
        read(new JpegScanValidator(frame, parts, first, last, high, low), to, end);
        return end;
    }

    private JpegScanValidator.Part part(
            JpegFrameHeader.Component component, int tables, boolean needsAc, boolean needsDc) {
        HuffmanTable dc = needsDc ? table(dcTables, (tables >> 4) & 15) : HuffmanTable.EMPTY;
        HuffmanTable ac = needsAc ? table(acTables, tables & 15) : HuffmanTable.EMPTY;
        if (component.quantization() > 3) {
            throw new IllegalArgumentException("a scan without its table");
        }
        return new JpegScanValidator.Part(component, dc, ac, firstSteps[component.quantization()]);
    }

    private static HuffmanTable table(HuffmanTable[] tables, int index) {
        if (index >= tables.length || tables[index] == null) {
            throw new IllegalArgumentException("a scan without its table");
        }
        return tables[index];
    }

    /**
     * Each bit of a coefficient comes once, from the highest down: T.81, section G.1.1.1.2. Decoders go on where not.
     */
    private void checkProgression(int component, int first, int last, int high, int low) {
        if (bitsKnown[component] == null) {
            bitsKnown[component] = new int[64];
            Arrays.fill(bitsKnown[component], -1);
        }
        int[] known = bitsKnown[component];
        regular &= first == 0 || known[0] >= 0;
        for (int k = first; k <= last; k++) {
            regular &= high == Math.max(0, known[k]) && (high == 0 || high == low + 1);
            known[k] = low;
        }
    }

    /** Reads a scan's data from restart marker to restart marker. */
    private void read(JpegScanValidator scan, int from, int end) {
        int groups = scan.groupsAcross() * scan.groupsDown();
        int each = restartInterval > 0 ? restartInterval : groups;
        int at = from;
        int restart = 0;
        for (int group = 0; group < groups; group += each) {
            int to = endOfStretch(at, end);
            int until = Math.min(groups, group + each);
            JpegScanValidator.Read read = scan.read(new JpegBitReader(file, at, to), group, until);
            boolean isLast = until == groups;
            boolean markerIsRight = isLast ? to == end : to < end && (file[to + 1] & 0xFF) == 0xD0 + restart % 8;
            boolean complete = read.groups() == until - group;
            if (!complete || (read.bitsLeft() >= scan.leastGroupBits() && !isFilling(at, to, read.bitsLeft()))) {
                regular = false;
                damage(scan, group, read, until, to == file.length);
            } else if (read.bitsLeft() >= 8) {
                regular = false;
            }
            if (!markerIsRight) {
                regular = false;
                if (!isLast || to != end) {
                    damage(scan, until, groups);
                }
                return;
            }
            at = to + 2;
            restart++;
        }
        // Behind a restart marker levels begin anew, so what is shifted ends there; then only its codes can tell.
        if (damaged.isEmpty() && each == groups) {
            scan.shiftedRow().ifPresent(row -> damage(scan, row * scan.groupsAcross(), groups));
        }
    }

    /** Some cameras fill up the data with bytes of zeros or ones; damage leaves other things. */
    private boolean isFilling(int from, int to, long bits) {
        int bytes = (int) (bits / 8);
        for (int at = Math.max(from, to - bytes); at < to; at++) {
            if (file[at] != 0 && file[at] != (byte) 0xFF) {
                return false;
            }
        }
        return true;
    }

    /** The place of the next restart marker, or the end. */
    private int endOfStretch(int from, int end) {
        for (int at = from; at + 1 < end; at++) {
            int second = file[at + 1] & 0xFF;
            if (file[at] == (byte) 0xFF && second >= 0xD0 && second <= 0xD7) {
                return at;
            }
        }
        return end;
    }

    private void damage(JpegScanValidator scan, int from, JpegScanValidator.Read read, int until, boolean cutOff) {
        damage(scan, read.ranOut() && cutOff ? from + read.groups() : from, until);
    }

    /** The rows from the first damaged group to the last one; of one row, from its first group on. */
    private void damage(JpegScanValidator scan, int from, int until) {
        if (from >= until) {
            return;
        }
        JpegFrameHeader frame = scan.frame();
        int across = scan.groupsAcross();
        int top = from / across * scan.groupHeightPx();
        int bottom = Math.min(frame.height(), ((until - 1) / across + 1) * scan.groupHeightPx());
        boolean oneRow = from / across == (until - 1) / across;
        int left = oneRow ? from % across * scan.groupWidthPx() : 0;
        int right = oneRow ? Math.min(frame.width(), ((until - 1) % across + 1) * scan.groupWidthPx()) : frame.width();
        PixelRectangle area =
                new PixelRectangle(left, top, right, bottom).upright(orientation, frame.width(), frame.height());
        damaged = Optional.of(damaged.map(area::with).orElse(area));
    }
}
