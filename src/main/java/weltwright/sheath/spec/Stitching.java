package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The choices for sewing, with a saddle stitch.
 *
 * @param marginMm distance of the stitch row from the outer edge
 * @param pitchMm pitch of the iron; 25.4 over the stitches per inch
 * @param backStitches number of stitches sewn back at either end of a seam, so that it cannot come undone
 */
@RecordBuilder
public record Stitching(double marginMm, double pitchMm, int backStitches) implements StitchingBuilder.With {
    /** 4 mm irons, 1/8 in from the edge, two stitches back: common practice for a belt knife. */
    public static final Stitching USUAL = new Stitching(25.4 / 8, 4, 2);

    /** Width of an awl or a pricking iron for thread of 0.8 to 1 mm. Common practice. */
    private static final double HOLE_MM = 1.2;

    /** Greatest width of a hole as a share of the iron's pitch. Common practice. */
    private static final double HOLE_TO_PITCH = 0.4;

    /** Returns the diameter of a stitch hole, in mm. */
    public double holeMm() {
        return Math.min(HOLE_MM, HOLE_TO_PITCH * pitchMm);
    }
}
