package weltwright.sheath.pattern;

import weltwright.geometry.Polyline;

/**
 * A line that is drawn on a piece, not cut.
 *
 * @param line where, in the frame of the piece, in mm
 * @param kind its meaning
 * @param label a short text beside it; may be empty
 */
public record Mark(Polyline line, Kind kind, String label) {

    /** The meaning of a mark. */
    public enum Kind {
        /** The leather is folded along it. */
        FOLD,
        /** A row of stitch holes. */
        STITCH_ROW,
        /** Where stitching begins or ends. */
        STITCH_END,
        /** A short stroke at the edge that is aligned with one on another piece. */
        NOTCH,
        /** The direction of the leather's least stretch, with a head at its last point. */
        GRAIN,
        /** Where the knife lies under the leather. */
        KNIFE,
        /** Where another piece is laid on and glued. */
        PLACE,
        /** From here to the end of the piece the leather is skived, to zero thickness. */
        SKIVE,
        /** Where the first tooth of an iron is set, so that its last falls on the end or a corner. */
        IRON
    }
}
