package weltwright.image;

/** Locates the peak of a sampled profile, such as that across a line or of the gradient across an edge. */
public final class ProfilePeak {
    private ProfilePeak() {}

    /**
     * Returns the centre of a peak: the centroid under a parabolic window, which is moved to the centroid six times.
     * The centroid of a symmetric peak is its middle wherever the samples lie.
     *
     * @param values none negative; not all 0 near the start
     * @param start index to start from, such as that of the greatest value
     * @param halfWindow half the window's width, in samples
     * @return the centre in samples from the first one, with a fraction
     */
    public static double centre(double[] values, int start, double halfWindow) {
        double centre = start;
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
