package weltwright.assembly;

import java.util.ArrayList;
import java.util.List;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.PlacedHardware;

/** Lists the checks of a finished sheath that apply to a pattern. */
final class FinalChecks {
    private static final Messages TEXTS = Messages.of(FinalChecks.class);

    private FinalChecks() {}

    static List<String> of(Pattern pattern) {
        List<String> checks = new ArrayList<>();
        checks.add(TEXTS.text("final-checks.the-knife-goes-in-to"));
        checks.add(
                has(pattern, Hardware.Kind.SNAP)
                        ? TEXTS.text("final-checks.held-upside-down-and-shaken")
                        : TEXTS.text("final-checks.held-upside-down-and-shaken-over-a-soft"));
        if (has(pattern, Hardware.Kind.SNAP)) {
            checks.add(TEXTS.text("final-checks.the-snap-closes-with-a"));
        }
        if (!pattern.seams().isEmpty()) {
            checks.add(TEXTS.text("final-checks.no-stitch-is-loose-and"));
        }
        if (has(pattern, Hardware.Kind.RIVET)) {
            checks.add(
                    pattern.fastenings().stream().anyMatch(PlacedHardware::covered)
                            ? TEXTS.text("final-checks.no-rivet-turns-and-inside")
                            : TEXTS.text("final-checks.no-rivet-turns-and-inside-none-is-felt"));
        }
        if (has(pattern, Hardware.Kind.RING)) {
            checks.add(TEXTS.text("final-checks.the-ring-swings-freely-and"));
        }
        checks.add(TEXTS.text("final-checks.your-belt-goes-through-and"));
        if (pattern.pieces().stream()
                .flatMap(piece -> piece.holes().stream())
                .anyMatch(hole -> hole.use() == Hole.Use.DRAIN)) {
            checks.add(TEXTS.text("final-checks.light-shows-through-the-drain"));
        }
        checks.add(TEXTS.text("final-checks.a-white-cloth-rubbed-inside"));
        checks.add(TEXTS.text("final-checks.the-tape-is-off-the"));
        return List.copyOf(checks);
    }

    private static boolean has(Pattern pattern, Hardware.Kind kind) {
        return pattern.fastenings().stream().map(PlacedHardware::kind).anyMatch(kind::equals);
    }
}
