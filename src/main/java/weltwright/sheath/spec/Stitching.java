package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * The choices for sewing, with a saddle stitch.
 *
 * @param marginMm distance of the stitch row from the outer edge
 * @param pitchMm pitch of the iron; 25.4 over the stitches per inch
 * @param backStitches number of stitches sewn back at either end of a seam, so that it cannot come undone
 * @param threadMm diameter of the thread; empty for the one that goes with the pitch
 */
@RecordBuilder
public record Stitching(double marginMm, double pitchMm, int backStitches, OptionalDouble threadMm)
        implements StitchingBuilder.With {
    /** 4 mm irons, 1/8 in from the edge, two stitches back: common practice for a belt knife. */
    public static final Stitching USUAL = new Stitching(25.4 / 8, 4, 2, OptionalDouble.empty());

    /** Width of an awl or a pricking iron for thread of 0.8 to 1 mm. Common practice. */
    private static final double HOLE_MM = 1.2;

    /** Greatest width of a hole as a share of the iron's pitch. Common practice. */
    private static final double HOLE_TO_PITCH = 0.4;

    public Stitching {
        Objects.requireNonNull(threadMm);
    }

    /** Returns the diameter of a stitch hole, in mm. */
    public double holeMm() {
        return Math.min(HOLE_MM, HOLE_TO_PITCH * pitchMm);
    }
}
