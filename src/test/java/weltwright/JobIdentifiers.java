package weltwright;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.assembly.AssemblyPlan;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;

/** The identifiers by which jobs refer to pieces and operations, of sheaths with all kinds of pieces. */
final class JobIdentifiers {
    private JobIdentifiers() {}

    /** Prints them, one a line. */
    public static void main(String[] args) {
        all().forEach(System.out::println);
    }

    static List<String> all() {
        List<String> all = new ArrayList<>();
        for (SheathKind kind : SheathKind.values()) {
            for (BeltAttachment.Style style : BeltAttachment.Style.values()) {
                Pattern pattern = PatternMaker.make(
                        TestKnives.dropPoint(),
                        TestSpecs.bladeAlone(kind)
                                .withBelt(TestSpecs.bladeAlone(kind).belt().withStyle(style))
                                .withStrap(Optional.of(HandleStrap.USUAL)));
                pattern.pieces().stream().map(Piece::id).forEach(all::add);
                all.addAll(AssemblyPlan.of(pattern).order().identifiers(pattern.pieces()));
            }
        }
        return all;
    }
}
