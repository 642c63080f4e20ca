package weltwright.app.gui.pattern;

import java.util.List;
import java.util.Optional;
import weltwright.job.SheathDesign;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;

/** Where in the drawings of a sheath an advice on it is seen. */
sealed interface AdvicePlace {
    /** Length of the blade's end whose corner may stay empty, as the advice looks at it; chosen by eye. */
    double BEFORE_TIP_MM = 15;

    /** A stretch along the knife, x in mm in its frame; seen in the cross-section. */
    record Stretch(double fromMm, double toMm) implements AdvicePlace {}

    /** Holes of pieces; seen in the pattern. */
    record Holes(List<Seam.Layer> layers) implements AdvicePlace {}

    /** The way of the knife out of the sheath; seen in the test draw. */
    record Draw() implements AdvicePlace {}

    /** All pieces. */
    record Whole() implements AdvicePlace {}

    static AdvicePlace of(Advice advice, SheathDesign design) {
        double throat = design.throatMm();
        double heel = design.knife().landmarks().heel().x();
        double tip = design.knife().landmarks().tip().x();
        if (advice instanceof Advice.EdgeNearStitches near) {
            return new Stretch(near.atMm(), near.atMm());
        }
        if (advice instanceof Advice.NarrowStretch narrow) {
            return new Stretch(narrow.narrow().fromMm(), narrow.narrow().toMm());
        }
        if (advice instanceof Advice.StaysWide wide) {
            return new Stretch(wide.fromMm(), wide.toMm());
        }
        if (advice instanceof Advice.OpenForGuard open) {
            return new Stretch(throat, throat + open.openMm());
        }
        if (advice instanceof Advice.EmptyCorner) {
            return new Stretch(tip - BEFORE_TIP_MM, tip);
        }
        if (advice instanceof Advice.WeltThickness) {
            return new Stretch(heel, tip);
        }
        if (advice instanceof Advice.HeldByForm
                || advice instanceof Advice.HeldByFriction
                || advice instanceof Advice.LooseThroat
                || advice instanceof Advice.SeatedAtGuard
                || advice instanceof Advice.HeldByStrap
                || advice instanceof Advice.HoldsBladeAlone) {
            return new Stretch(throat, Math.max(throat, heel));
        }
        if (advice instanceof Advice.DrawnInArc || advice instanceof Advice.DrawnAslant) {
            return new Draw();
        }
        if (advice instanceof Advice.PitchFitted row) {
            return seam(design.pattern(), row.seam());
        }
        return advice instanceof Advice.RivetsAgainstBlade ? rivets(design.pattern()) : new Whole();
    }

    private static AdvicePlace seam(Pattern pattern, Seam.Kind kind) {
        Optional<Seam> seam =
                pattern.seams().stream().filter(s -> s.kind() == kind).findFirst();
        return seam.<AdvicePlace>map(s -> new Holes(s.layers())).orElseGet(Whole::new);
    }

    private static AdvicePlace rivets(Pattern pattern) {
        return new Holes(pattern.fastenings().stream()
                .filter(placed -> placed.purpose() == PlacedHardware.Purpose.BELT_STRAP_RIVETS
                        || placed.purpose() == PlacedHardware.Purpose.RING_STRAP_RIVETS)
                .flatMap(placed -> placed.layers().stream())
                .toList());
    }
}
