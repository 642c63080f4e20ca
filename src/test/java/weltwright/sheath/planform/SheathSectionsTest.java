package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;

class SheathSectionsTest {

    /** Wherever it is cut: the knife lies in its room, the leather outside it, the welt between the leather. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theKnifeLiesInItsRoomAndTheLeatherRoundThat(SheathKind kind) {
        for (Knife knife : TestKnives.all()) {
            SheathSpec spec = TestSpecs.bladeAlone(kind).withHandleDepthMm(30);
            SheathSections sections = PatternMaker.madeUp(knife, spec).sections();
            for (double x = sections.fromMm(); x < sections.toMm() - 3; x += 2.7) {
                SheathSection cut = sections.at(x);
                var room = Polyline.closed(cut.room()).polygon().buffer(0.05);
                assertThat(room.covers(Polyline.closed(cut.knife().boundary()).polygon()))
                        .as("at %s", x)
                        .isTrue();
                for (Point p : cut.room()) {
                    assertThat(p.y()).isLessThanOrEqualTo(heightAt(cut.face(), p.x()) + 1e-6);
                }
            }
        }
    }

    /**
     * Worked by hand: 9 mm of welt reaches 27 mm past the tip. Before that the two panels meet at the spine in the
     * middle; where the welt is whole, the face lies 4.5 mm over it. The welt is skived over 27 mm and the margin of
     * 3.2 mm, measured along a row that leans by no more than 34 degrees there; so in between the face rises by no more
     * than 4.5 / (30.2 cos 34°) = 0.18 on each mm.
     */
    @Test
    void nearTheTipTheFaceLiesOnTheWeltAtTheSpineToo() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT)
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        Knife knife = TestKnives.dropPoint();
        SheathSections sections = PatternMaker.madeUp(knife, spec).sections();
        double tip = knife.landmarks().tip().x();

        assertThat(atSpine(sections, tip - 29)).isZero();
        assertThat(atSpine(sections, tip - 1)).isBetween(2.5, 4.5);
        for (double x = tip - 29; x < tip - 4; x += 3) {
            assertThat(atSpine(sections, x + 3) - atSpine(sections, x)).isBetween(0.0, 3 * 0.18);
        }
    }

    /**
     * Where three layers of 3 mm are skived at the spine they lie on each other, each as thin as the others, between
     * two panels that share the bulge; or on a back that lies flat, half of the whole welt below the middle.
     */
    @ParameterizedTest
    @EnumSource(Leather.Bulge.class)
    void theLayersOfASkivedWeltLieOnEachOther(Leather.Bulge bulge) {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT)
                .withLeather(new Leather(3, 0.5, 0, bulge))
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        List<SheathSection.Layer> welt =
                PatternMaker.madeUp(TestKnives.dropPoint(), spec).sections().at(100 - 15).welt().stream()
                        .filter(layer -> layer.fromY() > 0)
                        .toList();

        assertThat(welt).hasSize(3);
        double thickness = welt.get(0).toZ() - welt.get(0).fromZ();
        assertThat(thickness).isBetween(0.3, 2.7);
        for (int i = 1; i < 3; i++) {
            assertThat(welt.get(i).fromZ()).isEqualTo(welt.get(i - 1).toZ());
            assertThat(welt.get(i).toZ() - welt.get(i).fromZ()).isCloseTo(thickness, within(1e-9));
        }
        assertThat(welt.get(0).fromZ()).isCloseTo(bulge == Leather.Bulge.FACE ? -4.5 : -1.5 * thickness, within(1e-9));
    }

    private static double atSpine(SheathSections sections, double x) {
        List<Point> face = sections.at(x).face();
        return face.get(face.size() - 1).y();
    }

    /**
     * Worked by hand: 3.5 mm of blade wants 2 × 3 mm of welt, from the cavity at 10.8 mm to the edge 4 + 3.175 mm on.
     */
    @Test
    void theWeltIsCutInItsLayers() {
        SheathSections sections = PatternMaker.madeUp(
                        TestKnives.wedge(3.5, 0.4), TestSpecs.bladeAlone(SheathKind.PANELS))
                .sections();
        SheathSection cut = sections.at(50);

        assertThat(sections.fromMm()).as("where the row begins").isCloseTo(25.4 / 8, within(0.01));
        assertThat(cut.welt()).hasSize(4);
        SheathSection.Layer layer = cut.welt().get(0);
        assertThat(layer.fromY()).isCloseTo(-10.8 - 4 - 3.175, within(0.05));
        assertThat(layer.toY()).isCloseTo(-10.8, within(0.05));
        assertThat(layer.fromZ()).isCloseTo(-3, within(1e-9));
        assertThat(layer.toZ()).isCloseTo(0, within(1e-9));
        assertThat(cut.welt().get(1).fromZ()).isCloseTo(0, within(1e-9));
        assertThat(cut.welt().get(1).toZ()).isCloseTo(3, within(1e-9));
        assertThat(cut.stitches()).hasSize(2);
        assertThat(cut.stitches().get(0)).isCloseTo(-14.8, within(0.05));
    }

    /** On a flat back a handle of 16 mm and 0.8 mm of ease rests half of both above it, the welt's middle 1.5 mm. */
    @Test
    void onAFlatBackTheKnifeIsLifted() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withLeather(new Leather(3, 0.5, 0, Leather.Bulge.FACE))
                .withWelt(new WeltSpec(OptionalInt.of(1), 4, List.of(), false))
                .withHandleDepthMm(60);
        SheathSection cut =
                PatternMaker.madeUp(TestKnives.wedge(2, 0.4), spec).sections().at(-30);

        assertThat(cut.knifeLiftMm()).isCloseTo(8 + 0.8 - 1.5, within(0.03));
        assertThat(cut.back()).allMatch(p -> p.y() == -1.5);
    }

    /**
     * Worked by hand: a cover of 1 mm lies on the back at the rivets, as wide as its piece, and the knife over it by
     * the ease of 0.8 mm. Farther down there is none.
     */
    @ParameterizedTest
    @CsvSource({"FOLDED, SHARED", "PANELS, SHARED", "PANELS, FACE"})
    void theCoverOverRivetHeadsLiesBetweenKnifeAndBack(SheathKind kind, Leather.Bulge bulge) {
        SheathSpec spec = TestSpecs.bladeAlone(kind)
                .withLeather(new Leather(3, 0.5, 0, bulge))
                .withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 40, 4));
        PatternMaker.Made made = PatternMaker.madeUp(TestKnives.wedge(4, 4), spec);
        PlacedHardware rivets = made.pattern().fastenings().get(0);
        // Pieces are laid tip down, in the knife's frame x leads to the tip.
        double rivet = -rivets.layers().get(0).holes().get(0).y();
        SheathSection cut = made.sections().at(rivet);
        double wide = made.pattern().pieces().stream()
                .filter(piece -> piece.kind() == Piece.Kind.RIVET_COVER)
                .mapToDouble(piece ->
                        piece.outline().lineString().getEnvelopeInternal().getWidth())
                .findFirst()
                .orElseThrow();

        assertThat(Polyline.closed(cut.rivetCover()).polygon().isValid()).isTrue();
        var cover = Polyline.closed(cut.rivetCover()).lineString().getEnvelopeInternal();
        double knife = cut.knifeLiftMm() - cut.knife().thicknessMm() / 2;
        assertThat(cover.getWidth()).isCloseTo(wide, within(0.6));
        assertThat(cover.getMaxY() - cover.getMinY()).isCloseTo(1, within(0.02));
        assertThat(knife - cover.getMaxY()).isCloseTo(0.8, within(0.02));
        assertThat(made.sections().at(made.sections().toMm() - 10).rivetCover()).isEmpty();
    }

    private static double heightAt(List<Point> path, double y) {
        for (int i = 0; i + 1 < path.size(); i++) {
            Point a = path.get(i);
            Point b = path.get(i + 1);
            if (a.x() <= y && y <= b.x()) {
                return a.x() == b.x()
                        ? Math.max(a.y(), b.y())
                        : a.towards(b, (y - a.x()) / (b.x() - a.x())).y();
            }
        }
        return Double.POSITIVE_INFINITY;
    }
}
