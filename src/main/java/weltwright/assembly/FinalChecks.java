package weltwright.assembly;

import java.util.ArrayList;
import java.util.List;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.PlacedHardware;

/** Lists the checks of a finished sheath that apply to a pattern. */
final class FinalChecks {
    private FinalChecks() {}

    static List<String> of(Pattern pattern) {
        List<String> checks = new ArrayList<>();
        checks.add("The knife goes in to its seat and comes out without catching; its edge meets no stitch.");
        checks.add("Held upside down and shaken over a soft surface, the knife stays in"
                + (has(pattern, Hardware.Kind.SNAP) ? ", with the strap closed and with it open." : "."));
        if (has(pattern, Hardware.Kind.SNAP)) {
            checks.add("The snap closes with a click and lies beside the edge, not on it.");
        }
        if (!pattern.seams().isEmpty()) {
            checks.add("No stitch is loose, and the ends of the thread are cut close.");
        }
        if (has(pattern, Hardware.Kind.RIVET)) {
            checks.add("No rivet turns"
                    + (pattern.fastenings().stream().anyMatch(PlacedHardware::covered)
                            ? ", and inside none is felt through its cover."
                            : ", and inside none is felt."));
        }
        if (has(pattern, Hardware.Kind.RING)) {
            checks.add("The ring swings freely, and both straps hold when they are pulled hard.");
        }
        checks.add("Your belt goes through, and the sheath hangs as it should, standing and sitting.");
        if (pattern.pieces().stream()
                .flatMap(piece -> piece.holes().stream())
                .anyMatch(hole -> hole.use() == Hole.Use.DRAIN)) {
            checks.add("Light shows through the drain hole.");
        }
        checks.add("A white cloth, rubbed inside and out, stays white.");
        checks.add("The tape is off the knife, and the blade is dry and oiled.");
        return List.copyOf(checks);
    }

    private static boolean has(Pattern pattern, Hardware.Kind kind) {
        return pattern.fastenings().stream().map(PlacedHardware::kind).anyMatch(kind::equals);
    }
}
