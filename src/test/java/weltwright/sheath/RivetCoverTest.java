package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;

/** The leather takes in the cover that lies over the heads of the rivets. */
class RivetCoverTest {
    private static final double COVER_MM = 1;

    /**
     * Worked by hand. A slab of 4 mm with 0.8 mm of ease is 5.6 mm thick, its welt 6 mm: a folded body lies flat over
     * it and goes straight up at the fold. A cover of 1 mm makes the stack 6.6 mm: at the fold each half has 0.5 mm
     * more to go up, and from the welt rises by 0.3 mm on the 4 mm to the slab, which is 0.01 mm.
     */
    @Test
    void aFoldedBodyIsWiderByTheCoverBesideIt() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.FOLDED)
                .withWelt(new WeltSpec(OptionalInt.of(2), 4, List.of(3.0), false));
        Knife slab = TestKnives.wedge(4, 4);
        Pattern covered = PatternMaker.make(slab, spec.withBelt(belt(BeltAttachment.Style.RIVETED_STRAP)));
        Pattern bare = PatternMaker.make(slab, spec.withBelt(belt(BeltAttachment.Style.SEWN_STRAP)));
        PlacedHardware rivets = covered.fastenings().get(0);
        double[] at = rivets.layers().get(0).holes().stream()
                .mapToDouble(p -> -p.y())
                .sorted()
                .toArray();
        double reach = ((Fastener) rivets.hardware()).capMm() / 2 + 6;
        List<Point> row = covered.seams().get(0).layers().get(0).holes();
        int beside = 0;
        int away = 0;

        for (int i = 0; i < row.size() && -row.get(i).y() < 85; i++) {
            double x = -row.get(i).y();
            double wider = acrossMm(covered, i) - acrossMm(bare, i);
            assertThat(wider).as("at %s", x).isBetween(-0.01, COVER_MM + 0.1);
            if (at[0] <= x && x <= at[1]) {
                assertThat(wider).as("at %s", x).isCloseTo(COVER_MM, within(0.1));
                beside++;
            } else if (x > at[1] + reach + 3) {
                assertThat(wider).as("at %s", x).isCloseTo(0, within(0.05));
                away++;
            }
        }
        assertThat(beside).isGreaterThan(3);
        assertThat(away).isGreaterThan(3);
    }

    /** Where a strip pulled tight round knife and cover is as wide, within what leather gives and a stitch is off. */
    @ParameterizedTest
    @CsvSource({"FOLDED, SHARED", "PANELS, SHARED", "PANELS, FACE", "PANELS_EDGE_WELT, FACE"})
    void leatherOverTheCoverAgreesWithTheStrip(SheathKind kind, Leather.Bulge bulge) {
        SheathSpec spec = TestSpecs.bladeAlone(kind)
                .withLeather(new Leather(3, 0.5, 0, bulge))
                .withBelt(belt(BeltAttachment.Style.RIVETED_STRAP));
        Knife knife = TestKnives.dropPoint();
        Pattern pattern = PatternMaker.make(knife, spec);

        assertThat(pattern.pieces()).anyMatch(piece -> piece.kind() == Piece.Kind.RIVET_COVER);
        assertThat(WrapAccuracy.widths(knife, spec, pattern))
                .hasSizeGreaterThan(20)
                .allSatisfy(width -> assertThat(width.wideMm()).as("%s", width).isBetween(-0.1, 0.5));
    }

    /** On a flat back the knife lies on the cover: 1 mm of it, 8 mm of handle and 0.8 mm of ease below its middle. */
    @Test
    void onAFlatBackTheKnifeLiesOnTheCover() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withLeather(new Leather(3, 0.5, 0, Leather.Bulge.FACE))
                .withWelt(new WeltSpec(OptionalInt.of(1), 4, List.of(), false))
                .withHandleDepthMm(60)
                .withBelt(belt(BeltAttachment.Style.RIVETED_STRAP));
        PatternMaker.Made made = PatternMaker.madeUp(TestKnives.wedge(2, 0.4), spec);
        double rivet = made.pattern().fastenings().get(0).layers().get(0).holes().stream()
                .mapToDouble(p -> -p.y())
                .min()
                .orElseThrow();

        assertThat(made.sections().at(rivet + 5).knifeLiftMm()).isCloseTo(COVER_MM + 8 + 0.8 - 1.5, within(0.03));
    }

    private static BeltAttachment belt(BeltAttachment.Style style) {
        return new BeltAttachment(style, 38, 4);
    }

    /** Across the body, from a hole of the face's half to that of the back's. */
    private static double acrossMm(Pattern pattern, int hole) {
        List<Seam.Layer> layers = pattern.seams().get(0).layers();
        return layers.get(0)
                .holes()
                .get(hole)
                .distance(layers.get(layers.size() - 1).holes().get(hole));
    }
}
