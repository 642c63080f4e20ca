package weltwright.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.units.MeasureUnit;

/**
 * The hardware needed for one purpose in a sheath.
 *
 * @param name its purpose: "belt strap rivets"
 * @param hardware the item
 * @param count number of items
 * @param punchMm diameter of the punch; 0 for a ring
 * @param throughMm thickness of leather that one item holds
 * @param warnings sentences on leather too thick or too thin and holes too near
 */
public record HardwareRequirement(
        String name, Hardware hardware, int count, double punchMm, double throughMm, List<String> warnings) {
    private static final Messages TEXTS = Messages.of(HardwareRequirement.class);

    public HardwareRequirement {
        warnings = List.copyOf(warnings);
    }

    static List<HardwareRequirement> of(Pattern pattern, MeasureUnit unit) {
        HoleSpacing spacing = new HoleSpacing(pattern, unit);
        return pattern.fastenings().stream()
                .map(fastening -> of(fastening, spacing, unit))
                .toList();
    }

    private static HardwareRequirement of(PlacedHardware fastening, HoleSpacing spacing, MeasureUnit unit) {
        double punch = 0;
        List<String> warnings = new ArrayList<>();
        if (fastening.hardware() instanceof Fastener fastener) {
            punch = fastener.punchMm();
            gripWarning(fastener, fastening.stackMm(), unit).ifPresent(warnings::add);
            warnings.addAll(spacing.warnings(fastening, fastener));
        }
        return new HardwareRequirement(
                fastening.name(), fastening.hardware(), fastening.count(), punch, fastening.stackMm(), warnings);
    }

    /** Returns a sentence where the leather is too thin or too thick for a fastener. */
    static Optional<String> gripWarning(Fastener fastener, double stackMm, MeasureUnit unit) {
        if (fastener.grips(stackMm)) {
            return Optional.empty();
        }
        boolean thin = stackMm < fastener.gripFromMm();
        return Optional.of(TEXTS.text(
                "hardware-requirement.the-holds-leather-of-to",
                fastener.words(),
                unit.format(fastener.gripFromMm()),
                unit.format(fastener.gripToMm()),
                unit.format(stackMm),
                thin
                        ? TEXTS.text("hardware-requirement.too-thin-take-a-shorter")
                        : TEXTS.text("hardware-requirement.too-thick-take-a-longer")));
    }
}
