package weltwright.trace.edge;

import weltwright.geometry.Point;
import weltwright.trace.appearance.GroundAppearance;

/**
 * Scores the samples of a row across a knife's edge by the ground's lines, which are visible outside and hidden inside.
 *
 * @param scores for each sample, if the edge were there: the millimetres of line that agree with that minus those that
 *     contradict it
 * @param stepMm distance of samples
 */
record PrintedLineScore(double[] scores, double stepMm) {
    /** Length of line to both sides of an end that is compared; chosen by eye. */
    static final double END_MM = 0.8;

    /**
     * Scores a row.
     *
     * @param places number of samples
     * @param innermost the first of them, on the ground's plane, in mm
     * @param outermost the last one
     */
    static PrintedLineScore of(GroundAppearance ground, int places, Point innermost, Point outermost) {
        double stepMm = innermost.distance(outermost) / (places - 1);
        double[] visibility = new double[places];
        double outside = 0;
        for (int k = 0; k < places; k++) {
            visibility[k] = stepMm * ground.lineVisibilityAt(innermost.towards(outermost, k / (places - 1.0)));
            outside += visibility[k];
        }
        double[] scores = new double[places];
        double inside = 0;
        for (int k = 0; k < places; k++) {
            // Half of the sample at the edge lies inside.
            scores[k] = outside - inside - visibility[k];
            outside -= visibility[k];
            inside += visibility[k];
        }
        return new PrintedLineScore(scores, stepMm);
    }

    /** Returns 1 where a line is visible up to a sample and hidden behind it; 0 or less where no line ends there. */
    double endAt(int place) {
        int aside = (int) Math.round(END_MM / stepMm);
        if (place < aside || place + aside >= scores.length) {
            return 0;
        }
        double worse = scores[place] - Math.max(scores[place - aside], scores[place + aside]);
        return worse / (2 * aside * stepMm);
    }
}
