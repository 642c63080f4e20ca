package weltwright.sheath.pattern;

import weltwright.geometry.Polyline;

/**
 * A line drawn on a piece that is not cut.
 *
 * @param line where, in the frame of the piece, in mm
 * @param kind what it says
 * @param label a few words beside it, or empty
 */
public record Mark(Polyline line, Kind kind, String label) {

    /** What a mark says. */
    public enum Kind {
        /** The leather is folded along it. */
        FOLD,
        /** The row that the stitch holes stand in. */
        STITCH_ROW,
        /** Where stitching begins or ends. */
        STITCH_END,
        /** A short stroke at the edge that meets its partner on another piece. */
        NOTCH,
        /** The direction of the leather's least stretch, with a head at its last point. */
        GRAIN,
        /** Where the knife lies under the leather. */
        KNIFE,
        /** Where another piece is laid on and glued. */
        PLACE,
        /** From here to the end of the piece its leather is skived, down to nothing. */
        SKIVE,
        /** Where the first tooth of an iron is set, so that its last falls on the end or a corner. */
        IRON
    }
}
