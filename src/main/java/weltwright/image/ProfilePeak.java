package weltwright.image;

/** A rise and fall in a row of values: a line's profile, or the slope of an edge's. */
public final class ProfilePeak {
    private ProfilePeak() {}

    /**
     * The middle of a bump: its centroid under a window that tapers off, which is moved to the centroid until it stays.
     * A symmetric bump has it in its middle wherever the samples fall.
     *
     * @param values none negative; not all 0 near the top
     * @param top the place to start from, such as that of the greatest value
     * @param halfWindow in samples
     * @return a place between samples, from 0
     */
    public static double centre(double[] values, int top, double halfWindow) {
        double centre = top;
        for (int i = 0; i < 6; i++) {
            double sum = 0;
            double moment = 0;
            for (int k = 0; k < values.length; k++) {
                double u = (k - centre) / halfWindow;
                if (Math.abs(u) < 1) {
                    double weight = values[k] * (1 - u * u);
                    sum += weight;
                    moment += weight * (k - centre);
                }
            }
            centre += moment / sum;
        }
        return centre;
    }
}
