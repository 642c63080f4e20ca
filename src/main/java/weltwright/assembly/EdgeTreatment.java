package weltwright.assembly;

/**
 * One treatment of an edge.
 *
 * @param step groove, trim, bevel, sand or burnish
 * @param side of the leather
 * @param tool its name
 * @param size of the tool, or its setting: of a groover, the distance from the edge
 */
public record EdgeTreatment(OperationKind step, Side side, String tool, String size) {

    /** A side of an edge on the finished sheath. */
    public enum Side {
        OUTSIDE("outside"),
        INSIDE("inside"),
        /** Outside and inside, or the whole of the edge between them. */
        BOTH("both sides");

        private final String words;

        Side(String words) {
            this.words = words;
        }

        /** Returns its name for the maker. */
        public String words() {
            return words;
        }
    }

    static EdgeTreatment groove(double fromEdgeMm) {
        return new EdgeTreatment(
                OperationKind.GROOVE, Side.OUTSIDE, "stitching groover", EdgeToolSizes.inBothUnits(fromEdgeMm));
    }

    static EdgeTreatment bevel(Side side, double thicknessMm) {
        return new EdgeTreatment(OperationKind.BEVEL, side, "edger", EdgeToolSizes.edger(thicknessMm));
    }

    static EdgeTreatment burnish(double thicknessMm) {
        return new EdgeTreatment(OperationKind.BURNISH, Side.BOTH, "slicker", EdgeToolSizes.slicker(thicknessMm));
    }

    /** Grits are common practice. */
    static EdgeTreatment sand() {
        return new EdgeTreatment(OperationKind.SAND, Side.BOTH, "paper on a block", "grit 240, then 400");
    }

    static EdgeTreatment trim() {
        return new EdgeTreatment(OperationKind.TRIM, Side.BOTH, "knife, sanding block", "grit 120");
    }
}
