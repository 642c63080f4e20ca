package weltwright.bench;

/**
 * Something done to an edge.
 *
 * @param step groove, trim, bevel, sand or burnish
 * @param side which side of the leather
 * @param tool what it is done with
 * @param size of that tool, or its setting: of a groover, how far from the edge
 */
public record Treatment(Step step, Side side, String tool, String size) {

    /** A side of an edge, as the sheath hangs finished. */
    public enum Side {
        OUTSIDE("outside"),
        INSIDE("inside"),
        /** Outside and inside, or the whole of the edge between them. */
        BOTH("both sides");

        private final String words;

        Side(String words) {
            this.words = words;
        }

        /** In a maker's words. */
        public String words() {
            return words;
        }
    }

    static Treatment groove(double fromEdgeMm) {
        return new Treatment(Step.GROOVE, Side.OUTSIDE, "stitching groover", EdgeTools.both(fromEdgeMm));
    }

    static Treatment bevel(Side side, double thicknessMm) {
        return new Treatment(Step.BEVEL, side, "edger", EdgeTools.edger(thicknessMm));
    }

    static Treatment burnish(double thicknessMm) {
        return new Treatment(Step.BURNISH, Side.BOTH, "slicker", EdgeTools.slicker(thicknessMm));
    }

    /** Common practice: until no stroke of the edger shows. */
    static Treatment sand() {
        return new Treatment(Step.SAND, Side.BOTH, "paper on a block", "grit 240, then 400");
    }

    static Treatment trim() {
        return new Treatment(Step.TRIM, Side.BOTH, "knife, sanding block", "grit 120");
    }
}
