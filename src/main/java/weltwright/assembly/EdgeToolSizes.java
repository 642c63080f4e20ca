package weltwright.assembly;

import java.util.List;
import weltwright.message.Messages;
import weltwright.units.Length;
import weltwright.units.LengthUnit;

/**
 * Sizes of edge tools by thickness of leather. Common practice, from memory; makers of tools number them differently.
 */
final class EdgeToolSizes {
    private static final Messages TEXTS = Messages.of(EdgeToolSizes.class);

    /** Distance of a groove from a single edge. Common practice. */
    static final double GROOVE_FROM_EDGE_MM = 25.4 / 8;

    /** Widths of a slicker's slots, in sixteenths of an inch. From memory. */
    private static final List<Integer> SLICKER_SIXTEENTHS = List.of(2, 3, 4, 5, 6, 8, 10, 12);

    private EdgeToolSizes() {}

    /** Returns the number of the edger: 1 up to 4 oz, 2 below 7 oz, 3 up to 12 oz, else 4. */
    static String edger(double thicknessMm) {
        double ounces = thicknessMm / LengthUnit.OUNCE.inMm();
        return TEXTS.text("edge-tool-sizes.no", ounces <= 4 ? 1 : ounces < 7 ? 2 : ounces <= 12 ? 3 : 4);
    }

    /** Returns the narrowest slot that takes the edge, or the flat side for an edge thicker than all slots. */
    static String slicker(double thicknessMm) {
        return SLICKER_SIXTEENTHS.stream()
                .map(sixteenths -> sixteenths * LengthUnit.INCH.inMm() / 16)
                .filter(slot -> slot >= thicknessMm)
                .findFirst()
                .map(slot -> TEXTS.text("edge-tool-sizes.slot", inBothUnits(slot)))
                .orElse(TEXTS.text("edge-tool-sizes.flat-side"));
    }

    /** Returns a length in mm and in inches. */
    static String inBothUnits(double mm) {
        return TEXTS.text("edge-tool-sizes.mm", mm, new Length(mm).inInches());
    }
}
