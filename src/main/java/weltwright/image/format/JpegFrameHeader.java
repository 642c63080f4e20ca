package weltwright.image.format;

import java.util.List;

/**
 * The frame header of a JPEG file: size and components of the picture. ITU-T T.81, sections A.1 and B.2.2.
 *
 * @param progressive whether the coefficients come in several scans (SOF2)
 * @param width columns of the stored picture, in pixels
 * @param height rows of the stored picture, in pixels
 */
record JpegFrameHeader(boolean progressive, int width, int height, List<Component> components) {

    /**
     * A component of the frame: brightness or one of the colours.
     *
     * @param id component identifier
     * @param h horizontal sampling factor: blocks beside each other in an MCU
     * @param v vertical sampling factor: blocks below each other in an MCU
     * @param quantization number of its quantization table
     * @param blocksAcross columns of blocks that hold picture
     * @param blocksDown rows of blocks that hold picture
     * @param nonzero for each block of a progressive picture, a bit for each coefficient that is not 0; as wide and
     *     high as whole MCUs need
     */
    record Component(int id, int h, int v, int quantization, int blocksAcross, int blocksDown, long[] nonzero) {}

    private static final int BLOCK = 8;

    /**
     * Parses a frame header.
     *
     * @param marker second byte of the marker, such as 0xC0
     * @param from offset of the header's first byte after its length
     * @param to offset of the byte after the header
     * @throws IllegalArgumentException where the header is damaged, or the frame is not baseline, extended sequential
     *     or progressive with 8-bit samples
     */
    static JpegFrameHeader of(int marker, byte[] file, int from, int to) {
        int count = to - from < 6 ? 0 : file[from + 5] & 0xFF;
        boolean isKnown = marker >= 0xC0 && marker <= 0xC2;
        if (!isKnown || to - from < 6 + 3 * count || file[from] != 8 || (count != 1 && count != 3 && count != 4)) {
            throw new IllegalArgumentException("a frame of kind " + marker + " with " + count + " components");
        }
        int height = JpegMarkers.length(file, from + 1);
        int width = JpegMarkers.length(file, from + 3);
        int maxH = 1;
        int maxV = 1;
        for (int i = 0; i < count; i++) {
            int h = file[from + 7 + 3 * i] >> 4 & 15;
            int v = file[from + 7 + 3 * i] & 15;
            if (h < 1 || h > 4 || v < 1 || v > 4 || width == 0 || height == 0) {
                throw new IllegalArgumentException("a frame without size");
            }
            maxH = Math.max(maxH, h);
            maxV = Math.max(maxV, v);
        }
        int mcusAcross = ceil(width, BLOCK * maxH);
        int mcusDown = ceil(height, BLOCK * maxV);
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
                    ceil(ceil(width * h, maxH), BLOCK),
                    ceil(ceil(height * v, maxV), BLOCK),
                    new long[isProgressive ? mcusAcross * h * mcusDown * v : 0]);
        }
        return new JpegFrameHeader(marker == 0xC2, width, height, List.of(components));
    }

    int maxH() {
        return components.stream().mapToInt(Component::h).max().orElseThrow();
    }

    int maxV() {
        return components.stream().mapToInt(Component::v).max().orElseThrow();
    }

    int mcusAcross() {
        return ceil(width, BLOCK * maxH());
    }

    int mcusDown() {
        return ceil(height, BLOCK * maxV());
    }

    static int ceil(int a, int b) {
        return (a + b - 1) / b;
    }
}
