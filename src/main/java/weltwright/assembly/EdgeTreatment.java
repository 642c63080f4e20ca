package weltwright.assembly;

import static weltwright.assembly.OperationKind.BEVEL;
import static weltwright.assembly.OperationKind.BURNISH;
import static weltwright.assembly.OperationKind.GROOVE;
import static weltwright.assembly.OperationKind.SAND;
import static weltwright.assembly.OperationKind.TRIM;

import weltwright.message.Messages;

/**
 * One treatment of an edge.
 *
 * @param step groove, trim, bevel, sand or burnish
 * @param side of the leather
 * @param tool its name
 * @param size of the tool, or its setting: of a groover, the distance from the edge
 */
public record EdgeTreatment(OperationKind step, Side side, String tool, String size) {
    private static final Messages TEXTS = Messages.of(EdgeTreatment.class);

    /** A side of an edge on the finished sheath. */
    public enum Side {
        OUTSIDE(TEXTS.text("edge-treatment.outside")),
        INSIDE(TEXTS.text("edge-treatment.inside")),
        /** Outside and inside, or the whole of the edge between them. */
        BOTH(TEXTS.text("edge-treatment.both-sides"));

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
                GROOVE,
                Side.OUTSIDE,
                TEXTS.text("edge-treatment.stitching-groover"),
                EdgeToolSizes.inBothUnits(fromEdgeMm));
    }

    static EdgeTreatment bevel(Side side, double thicknessMm) {
        return new EdgeTreatment(BEVEL, side, TEXTS.text("edge-treatment.edger"), EdgeToolSizes.edger(thicknessMm));
    }

    static EdgeTreatment burnish(double thicknessMm) {
        return new EdgeTreatment(
                BURNISH, Side.BOTH, TEXTS.text("edge-treatment.slicker"), EdgeToolSizes.slicker(thicknessMm));
    }

    /** Grits are common practice. */
    static EdgeTreatment sand() {
        return new EdgeTreatment(
                SAND,
                Side.BOTH,
                TEXTS.text("edge-treatment.paper-on-a-block"),
                TEXTS.text("edge-treatment.grit-240-then-400"));
    }

    static EdgeTreatment trim() {
        return new EdgeTreatment(
                TRIM,
                Side.BOTH,
                TEXTS.text("edge-treatment.knife-sanding-block"),
                TEXTS.text("edge-treatment.grit-120"));
    }
}
