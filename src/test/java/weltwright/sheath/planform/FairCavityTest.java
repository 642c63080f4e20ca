package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Region;
import weltwright.geometry.curve.Outline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.TestKnives;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;

/** The cavity of a knife with an ease of 0.8 mm. */
class FairCavityTest {
    private static final double EASE = 0.8;
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /** A handle 40 mm wide, a blade of 20 mm and 120 mm long, with its tip in the middle. */
    private static final Knife STEPPED = knife(20, 10, 0);

    /** It ends 1.6 mm past a bare tip, or a tenth of a millimetre past the ease, and 0.5 mm past a drain hole's rim. */
    @ParameterizedTest
    @CsvSource({"0.8, 0, 1.6", "3, 0, 3.1", "0.8, 2, 8", "0.8, 4, 12"})
    void itsEndIsRoundPastTheTipOrTheDrainHole(double easeMm, double drainMm, double pastTipMm) {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS).withEaseMm(easeMm);
        FairCavity fair = new FairCavity(new Cavity(STEPPED, 0, easeMm), spec, INFINITE, drainMm, INFINITE, 10);
        assertThat(fair.region().extent().getMaxX()).isCloseTo(120 + pastTipMm, within(0.02));
    }

    /** Filled to a radius of 25 mm it stays as it is; but a hollow of the knife is not filled from step to tip. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void itsHollowsAreFilledToItsRadiusOnly(SheathKind kind) {
        Region room = fair(kind, STEPPED, -30).region();
        assertThat(room.withNotchesFilled(25).difference(room).area().getArea()).isLessThan(1.0);
        assertThat(room.boundary().crossings(60)[0]).isCloseTo(-10 - EASE, within(0.2));
    }

    /** A slim blade has no neck between where it is as wide as the room round the drain hole, and that. */
    @ParameterizedTest
    @CsvSource({"0.2, 40", "0.2, 70", "1.2, 40"})
    void aSlenderBladeHasNoNeckBeforeTheDrainHole(double halfWidthMm, double slenderMm) {
        Knife needle = knife(10, 10, halfWidthMm, 120 - slenderMm);
        Region room = fair(SheathKind.PANELS, needle, 0).region();
        for (double x = 10; x < 120 + 2 + 3.5; x += 0.5) {
            double[] sides = room.boundary().crossings(x);
            assertThat(sides[sides.length - 1] - sides[0]).as("at %s", x).isGreaterThan(2 * 2.5 - 0.05);
        }
    }

    /** Laid open, a folded sheath ends square to its fold: no corner is left empty there, no notch in the fold. */
    @Test
    void aFoldedOneEndsSquareToItsFold() {
        Region room = fair(SheathKind.FOLDED, STEPPED, 0).region();
        double end = room.extent().getMaxX();
        double fold = 10 + EASE;
        assertThat(room.contains(new Point(end - 0.1, fold), 0)).isTrue();
        assertThat(room.contains(new Point(end - 0.1, fold + 5), 0)).isTrue();
        assertThat(room.extent().centre().y).as("symmetric").isCloseTo(fold, within(0.02));
    }

    /**
     * With a welt along the edge alone, the spine's side is drawn in by the inner margin of 10 mm less 1.5 mm, over 30
     * mm from where the welt ends, 10 mm from the tip; there it is the spine itself. Nowhere is it farther in than
     * where panels at 45 degrees over the corner of the spine meet, 1.5 mm before the row.
     */
    @Test
    void withoutAWeltAtTheSpineItIsDrawnInTowardsTheThroat() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS_EDGE_WELT)
                .withWelt(new WeltSpec(OptionalInt.empty(), 10, List.of(), false));
        Knife box = TestKnives.wedge(3, 0.4);
        Region room = new FairCavity(new Cavity(box, 0, EASE), spec, INFINITE, 0, INFINITE, 10).region();
        double meet = 10 + 3 / 2.0 + EASE * Math.sqrt(2) + 1.5 - 10;

        // Corners are rounded from outside.
        assertThat(spineMm(room, 93) - (10 + EASE)).isBetween(-0.1, 0.7);
        assertThat(spineMm(room, 90 - 9) - (10 + EASE - 0.3 * 8.5)).isBetween(-0.1, 0.7);
        assertThat(spineMm(room, 90 - 18) - (10 + EASE - 0.6 * 8.5)).isBetween(-0.1, 0.7);
        assertThat(spineMm(room, 20)).isCloseTo(meet, within(0.01));
    }

    private static double spineMm(Region room, double x) {
        double[] sides = room.boundary().crossings(x);
        return sides[sides.length - 1];
    }

    /** With a drain hole of 4 mm. */
    private static FairCavity fair(SheathKind kind, Knife knife, double throatMm) {
        Cavity swept = new Cavity(knife, throatMm, EASE);
        double fold = kind == SheathKind.FOLDED ? swept.highestSpineMm() + EASE : INFINITE;
        return new FairCavity(swept, SheathSpec.standard(kind), fold, 2, fold - 3, 10);
    }

    private static Knife knife(double halfHandleMm, double halfBladeMm, double halfTipMm) {
        return knife(halfHandleMm, halfBladeMm, halfTipMm, 100);
    }

    /** From x = -100 to a tip at 120; its blade tapers up to some x and then, from a half width on, to the tip. */
    private static Knife knife(double halfHandleMm, double halfBladeMm, double halfTipMm, double taperMm) {
        double half = Math.max(halfTipMm, 0.01);
        Outline outline = Outline.polygon(List.of(
                new Point(-100, -halfHandleMm),
                new Point(-0.1, -halfHandleMm),
                new Point(0, -halfBladeMm),
                new Point(taperMm, halfTipMm == 0 ? -halfBladeMm : -half),
                new Point(120, -Math.min(half, 0.1)),
                new Point(120, Math.min(half, 0.1)),
                new Point(taperMm, halfTipMm == 0 ? halfBladeMm : half),
                new Point(0, halfBladeMm),
                new Point(-0.1, halfHandleMm),
                new Point(-100, halfHandleMm)));
        Landmarks at = new Landmarks(
                new Point(120, 0), new Point(0, -halfBladeMm), new Point(0, halfBladeMm), new Point(-100, 0));
        return new Knife(outline, at, 3, 16, CrossSectionShape.usual(0.4));
    }
}
