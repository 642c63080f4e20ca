package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;

/**
 * The hole at the tip that lets water out.
 *
 * @param diameterMm diameter of the hole, or 0 for none; ignored where it is lined
 * @param eyelet whether it is lined with an eyelet, whose post then gives the hole its size
 */
@RecordBuilder
public record DrainHole(double diameterMm, boolean eyelet) implements DrainHoleBuilder.With {
    /** A plain hole of 4 mm. Common practice. */
    public static final DrainHole USUAL = new DrainHole(4, false);

    /** A tip without a hole. */
    public static final DrainHole NONE = new DrainHole(0, false);
}
