package weltwright.trace.edge;

/**
 * The profile of a step from one colour to another along a row across an edge, projected onto the difference of the two
 * colours next to the edge. Its steepest place is the edge, however blurred and sharpened, as long as both are the same
 * on either side.
 *
 * <p>The colours are taken next to the edge and not from all of either side, where a shadow, grain or a reflection may
 * differ more from the colour at the edge than the two sides from each other. The sensor's noise is nearly equal in all
 * channels there, so the difference itself is the best projection (the matched filter for white noise).
 *
 * @param slope of the projected profile at each sample near the path, from sample {@code first}
 */
record StepProfile(double[] slope, int first) {
    /** Distance from the path at which the blur of the edge ends, in pixels; chosen by eye. */
    private static final double BLUR_PX = 2;

    /** Distance to which the colours beside the edge are averaged, in pixels; chosen by eye. */
    private static final double BESIDE_PX = 4;

    /** Greatest distance of the edge from the path, in pixels; chosen by eye. */
    private static final double SEARCHED_PX = 1.5;

    /**
     * Makes the profile of a row.
     *
     * @param colour of each sample of the band, row by row: blue, green, red
     * @param width samples on a row
     * @param path sample of the row near which the edge is
     */
    static StepProfile of(float[] colour, int row, int width, int path, double samplesPerPx) {
        int blur = (int) Math.round(BLUR_PX * samplesPerPx);
        int beside = (int) Math.round(BESIDE_PX * samplesPerPx);
        double[] inside = mean(colour, row * width, Math.max(0, path - beside), Math.max(1, path - blur));
        double[] outside =
                mean(colour, row * width, Math.min(width - 1, path + blur + 1), Math.min(width, path + beside + 1));
        int searched = (int) Math.round(SEARCHED_PX * samplesPerPx);
        int first = Math.max(1, path - searched);
        double[] slope = new double[Math.max(1, Math.min(width - 2, path + searched) - first + 1)];
        for (int k = 0; k < slope.length; k++) {
            int at = 3 * (row * width + Math.min(width - 2, first + k));
            for (int c = 0; c < 3; c++) {
                slope[k] += (outside[c] - inside[c]) * (colour[at + 3 + c] - colour[at - 3 + c]);
            }
        }
        return new StepProfile(slope, first);
    }

    /**
     * Makes the profile of a row from its contrast, where the colours beside the edge do not tell which way it steps:
     * on a ground as grey as steel.
     *
     * @param contrast of each sample of the band, row by row
     */
    static StepProfile ofContrast(float[] contrast, int row, int width, int path, double samplesPerPx) {
        int searched = (int) Math.round(SEARCHED_PX * samplesPerPx);
        int first = Math.max(0, path - searched);
        double[] slope = new double[Math.min(width - 1, path + searched) - first + 1];
        for (int k = 0; k < slope.length; k++) {
            slope[k] = contrast[row * width + first + k];
        }
        return new StepProfile(slope, first);
    }

    private static double[] mean(float[] colour, int row, int from, int to) {
        double[] mean = new double[3];
        for (int k = from; k < to; k++) {
            for (int c = 0; c < 3; c++) {
                mean[c] += colour[3 * (row + k) + c] / (to - from);
            }
        }
        return mean;
    }

    /** Returns the steepest place, to a fraction of a sample: the vertex of a parabola. */
    double steepest() {
        int best = 0;
        for (int k = 1; k < slope.length; k++) {
            best = slope[k] > slope[best] ? k : best;
        }
        if (best == 0 || best == slope.length - 1) {
            return first + best;
        }
        double bend = slope[best - 1] - 2 * slope[best] + slope[best + 1];
        double offset = bend >= 0 ? 0 : (slope[best - 1] - slope[best + 1]) / (2 * bend);
        return first + best + Math.max(-0.5, Math.min(0.5, offset));
    }
}
