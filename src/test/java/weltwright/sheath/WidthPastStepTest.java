package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;

/**
 * Leather is nowhere tight, and where it stays wide past a step the maker is told so, measured against a strip pulled
 * tight round the knife.
 */
class WidthPastStepTest implements RandomSheaths {
    private static final int TRIES = 4;

    /** Between the stations of the cavity and the stitches, and between the wrap and the strip of links. */
    private static final double NEAR_MM = 2.5;

    private static final double AGREES_MM = 0.5;

    /** Leather of 2 mm and more gives by this without being formed. By judgement; no source. */
    private static final double TIGHT_MM = 0.3;

    @Property(tries = TRIES)
    void nothingIsTightAndWhatStaysWideIsTold(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec any) {
        SheathSpec spec = WrapAccuracy.plain(knife, any);
        Pattern pattern;
        try {
            pattern = PatternMaker.make(knife, spec);
        } catch (UserFacingException refused) {
            return;
        }
        double limit = spec.kind() == SheathKind.FOLDED ? 1 : 1.5;
        List<WrapAccuracy.Width> widths = WrapAccuracy.widths(knife, spec, pattern);
        Optional<Advice.StaysWide> told = told(pattern);
        for (WrapAccuracy.Width width : widths) {
            assertThat(width.wideMm()).as("%s of %s", width, spec).isGreaterThan(-TIGHT_MM);
            if (!width.nearStep() && width.wideMm() > limit + AGREES_MM) {
                assertThat(told).as("%s of %s", width, spec).isPresent();
                assertThat(width.xMm())
                        .isBetween(told.get().fromMm() - NEAR_MM, told.get().toMm() + NEAR_MM);
                assertThat(width.wideMm()).isLessThan(told.get().byMm() + AGREES_MM + 2 * NEAR_MM);
            }
        }
        told.ifPresent(wide -> assertThat(widths)
                .as("%s of %s", wide, spec)
                .anyMatch(width -> width.xMm() > wide.fromMm() && width.wideMm() > limit - AGREES_MM));
    }

    /** A slanted throat, where the row on one side begins deeper than on the other. */
    @Test
    void panelsAgreeWithTheStripFromASlantedThroatOn() {
        SheathSpec spec = with(SheathSpec.standard(SheathKind.PANELS), Leather.Bulge.SHARED)
                .withThroat(new Throat(Throat.Shape.SLANTED_TO_SPINE, 2.5));
        Knife knife = TestKnives.dropPoint();

        assertThat(WrapAccuracy.widths(knife, spec, PatternMaker.make(knife, spec))
                        .get(0)
                        .wideMm())
                .isBetween(-TIGHT_MM, AGREES_MM);
    }

    /** Near its tip a sheath with a welt along the edge has 9 mm of it at the spine, too. */
    @Test
    void leatherOnAWeltPastTheTipAgreesWithTheStrip() {
        SheathSpec spec = with(SheathSpec.standard(SheathKind.PANELS_EDGE_WELT), Leather.Bulge.FACE)
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        Knife knife = TestKnives.dropPoint();
        List<WrapAccuracy.Width> nearTip = WrapAccuracy.widths(knife, spec, PatternMaker.make(knife, spec)).stream()
                .filter(width -> width.xMm() > knife.landmarks().tip().x() - 30)
                .toList();

        assertThat(nearTip)
                .hasSizeGreaterThan(5)
                .allSatisfy(width -> assertThat(width.wideMm()).as("%s", width).isBetween(-TIGHT_MM, AGREES_MM));
    }

    /** The bulge of a handle that is shared by two panels comes in on four rows in place of two. */
    @Test
    void panelsThatShareTheBulgeStayWideForLess() {
        SheathSpec panels = SheathSpec.standard(SheathKind.PANELS);
        Optional<Advice.StaysWide> alone =
                told(PatternMaker.make(TestKnives.dropPoint(), with(panels, Leather.Bulge.FACE)));
        Optional<Advice.StaysWide> shared =
                told(PatternMaker.make(TestKnives.dropPoint(), with(panels, Leather.Bulge.SHARED)));

        assertThat(lengthMm(shared)).isLessThanOrEqualTo(lengthMm(alone));
    }

    private static SheathSpec with(SheathSpec spec, Leather.Bulge bulge) {
        Leather leather = spec.leather();
        return spec.withLeather(
                new Leather(leather.thicknessMm(), leather.neutralFactor(), leather.formingShrink(), bulge));
    }

    private static double lengthMm(Optional<Advice.StaysWide> wide) {
        return wide.map(w -> w.toMm() - w.fromMm()).orElse(0.0);
    }

    private static Optional<Advice.StaysWide> told(Pattern pattern) {
        return pattern.advice().stream()
                .filter(Advice.StaysWide.class::isInstance)
                .map(Advice.StaysWide.class::cast)
                .findFirst();
    }
}
