package weltwright.assembly;

import java.util.List;
import weltwright.units.Length;
import weltwright.units.LengthUnit;

/**
 * Which size of an edge tool goes with a thickness of leather. All of it common practice, from memory; tools are
 * numbered differently by those who make them, so that the first stroke belongs on an offcut.
 */
final class EdgeToolSizes {
    /** How far from a single edge a groove runs. Common practice. */
    static final double GROOVE_FROM_EDGE_MM = 25.4 / 8;

    /** The widths of a slicker's slots, in sixteenths of an inch. */
    private static final List<Integer> SLICKER_SIXTEENTHS = List.of(2, 3, 4, 5, 6, 8, 10, 12);

    private EdgeToolSizes() {}

    /** Edgers no. 1 to 4: to 4 oz, to below 7 oz, to 12 oz, and for what is thicker. */
    static String edger(double thicknessMm) {
        double ounces = thicknessMm / LengthUnit.OUNCE.inMm();
        return "no. " + (ounces <= 4 ? 1 : ounces < 7 ? 2 : ounces <= 12 ? 3 : 4);
    }

    /**
     * The narrowest slot that takes the edge, which bevelling leaves no thicker than the leather; for an edge that is
     * thicker than all slots, the flat of the slicker.
     */
    static String slicker(double thicknessMm) {
        return SLICKER_SIXTEENTHS.stream()
                .map(sixteenths -> sixteenths * LengthUnit.INCH.inMm() / 16)
                .filter(slot -> slot >= thicknessMm)
                .findFirst()
                .map(slot -> "slot " + both(slot))
                .orElse("flat side");
    }

    /** As a metric ruler and as an inch ruler have it. */
    static String both(double mm) {
        return AssemblyText.text("%.1f mm (%s)", mm, new Length(mm).inInches());
    }
}
