package weltwright.image.format;

import java.util.List;

/**
 * How a JPEG file's picture is laid out: ITU-T T.81, sections A.1 and B.2.2.
 *
 * @param progressive whether it comes in several scans, each finer
 * @param components brightness and colours
 */
record JpegFrameHeader(boolean progressive, int width, int height, List<Component> components) {

    /**
     * @param id its number in the file
     * @param h blocks beside each other in a group
     * @param v blocks below each other in a group
     * @param quantization number of its table
     * @param nonzero for each block, which coefficients are not 0; as wide and high as whole groups need
     */
    record Component(int id, int h, int v, int quantization, int blocksAcross, int blocksDown, long[] nonzero) {}

    private static final int BLOCK = 8;

    /** @throws IllegalArgumentException where such a frame is damaged, or none that photos are stored in */
    static JpegFrameHeader of(int marker, byte[] file, int from, int to) {
        int count = to - from < 6 ? 0 : file[from + 5] & 0xFF;
        boolean isKnown = marker >= 0xC0 && marker <= 0xC2;
        if (!isKnown || to - from < 6 + 3 * count || file[from] != 8 || (count != 1 && count != 3 && count != 4)) {
            throw new IllegalArgumentException("a frame of kind " + marker + " with " + count + " components");
        }
        int height = JpegMarkers.length(file, from + 1);
        int width = JpegMarkers.length(file, from + 3);
        int mostH = 1;
        int mostV = 1;
        for (int i = 0; i < count; i++) {
            int h = file[from + 7 + 3 * i] >> 4 & 15;
            int v = file[from + 7 + 3 * i] & 15;
            if (h < 1 || h > 4 || v < 1 || v > 4 || width == 0 || height == 0) {
                throw new IllegalArgumentException("a frame without size");
            }
            mostH = Math.max(mostH, h);
            mostV = Math.max(mostV, v);
        }
        int groupsAcross = ceil(width, BLOCK * mostH);
        int groupsDown = ceil(height, BLOCK * mostV);
        Component[] components = new Component[count];
        for (int i = 0; i < count; i++) {
            int at = from + 6 + 3 * i;
            int h = file[at + 1] >> 4 & 15;
            int v = file[at + 1] & 15;
            boolean isProgressive = marker == 0xC2;
            components[i] = new Component(
                    file[at] & 0xFF,
                    h,
                    v,
                    file[at + 2] & 0xFF,
                    ceil(ceil(width * h, mostH), BLOCK),
                    ceil(ceil(height * v, mostV), BLOCK),
                    new long[isProgressive ? groupsAcross * h * groupsDown * v : 0]);
        }
        return new JpegFrameHeader(marker == 0xC2, width, height, List.of(components));
    }

    int mostH() {
        return components.stream().mapToInt(Component::h).max().orElseThrow();
    }

    int mostV() {
        return components.stream().mapToInt(Component::v).max().orElseThrow();
    }

    int groupsAcross() {
        return ceil(width, BLOCK * mostH());
    }

    int groupsDown() {
        return ceil(height, BLOCK * mostV());
    }

    static int ceil(int a, int b) {
        return (a + b - 1) / b;
    }
}
