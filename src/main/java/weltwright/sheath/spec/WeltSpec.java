package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.OptionalInt;

/**
 * The choices for the welt.
 *
 * @param layers number of layers, or empty for as many as make the welt at least as thick as the blade
 * @param innerMarginMm width of the welt between the cavity and the stitch row
 * @param leathersMm thicknesses of the leather at hand for it, each positive; empty for the sheath's own alone
 * @param inTwo whether it is cut in two pieces that meet end to end, which nest better and so save leather
 */
@RecordBuilder
public record WeltSpec(OptionalInt layers, double innerMarginMm, List<Double> leathersMm, boolean inTwo)
        implements WeltSpecBuilder.With {
    /** As many layers of the sheath's own leather as needed, in one piece. */
    public static final WeltSpec USUAL = new WeltSpec(OptionalInt.empty(), 4, List.of(), false);

    public WeltSpec {
        leathersMm = List.copyOf(leathersMm);
    }
}
