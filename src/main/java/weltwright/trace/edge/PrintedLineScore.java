package weltwright.trace.edge;

import weltwright.geometry.Point;
import weltwright.trace.appearance.GroundAppearance;

/**
 * The ground's lines on one row across a knife's edge, from well inside to well outside: outside they should be seen,
 * inside hidden.
 *
 * @param fits for each place of the row: were the edge there, how many millimetres of line would be as they should,
 *     less how many would not
 * @param stepMm from place to place
 */
record PrintedLineScore(double[] fits, double stepMm) {
    /** A line's end is told to a part of this. */
    private static final double HELD_MM = 0.8;

    /**
     * @param places of the row
     * @param inmost the first of them, on the ground's plane, in mm
     * @param outmost the last
     */
    static PrintedLineScore of(GroundAppearance ground, int places, Point inmost, Point outmost) {
        double stepMm = inmost.distance(outmost) / (places - 1);
        double[] shown = new double[places];
        double outside = 0;
        for (int k = 0; k < places; k++) {
            shown[k] = stepMm * ground.lineVisibilityAt(inmost.towards(outmost, k / (places - 1.0)));
            outside += shown[k];
        }
        double[] fits = new double[places];
        double inside = 0;
        for (int k = 0; k < places; k++) {
            // Of what lies at the edge itself half is inside.
            fits[k] = outside - inside - shown[k];
            outside -= shown[k];
            inside += shown[k];
        }
        return new PrintedLineScore(fits, stepMm);
    }

    /** 1 where a line is seen right up to a place and hidden right behind it; 0 or less where no line ends there. */
    double held(int place) {
        int aside = (int) Math.round(HELD_MM / stepMm);
        if (place < aside || place + aside >= fits.length) {
            return 0;
        }
        double worse = fits[place] - Math.max(fits[place - aside], fits[place + aside]);
        return worse / (2 * aside * stepMm);
    }
}
