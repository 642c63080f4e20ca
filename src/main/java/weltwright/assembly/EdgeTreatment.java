package weltwright.assembly;

/**
 * Something done to an edge.
 *
 * @param step groove, trim, bevel, sand or burnish
 * @param side which side of the leather
 * @param tool what it is done with
 * @param size of that tool, or its setting: of a groover, how far from the edge
 */
public record EdgeTreatment(OperationKind step, Side side, String tool, String size) {

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

    static EdgeTreatment groove(double fromEdgeMm) {
        return new EdgeTreatment(
                OperationKind.GROOVE, Side.OUTSIDE, "stitching groover", EdgeToolSizes.both(fromEdgeMm));
    }

    static EdgeTreatment bevel(Side side, double thicknessMm) {
        return new EdgeTreatment(OperationKind.BEVEL, side, "edger", EdgeToolSizes.edger(thicknessMm));
    }

    static EdgeTreatment burnish(double thicknessMm) {
        return new EdgeTreatment(OperationKind.BURNISH, Side.BOTH, "slicker", EdgeToolSizes.slicker(thicknessMm));
    }

    /** Common practice: until no stroke of the edger shows. */
    static EdgeTreatment sand() {
        return new EdgeTreatment(OperationKind.SAND, Side.BOTH, "paper on a block", "grit 240, then 400");
    }

    static EdgeTreatment trim() {
        return new EdgeTreatment(OperationKind.TRIM, Side.BOTH, "knife, sanding block", "grit 120");
    }
}
