package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.planform.SheathSection;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;

/**
 * A welt that ends between two layers of leather is skived to nothing there, over three thicknesses (common practice).
 */
class SkivedWeltTest implements RandomSheaths {
    private static final double NEAR_MM = 0.6;

    /** In one part or in two, each layer is marked where that begins, as far from its last stitch as it should. */
    @Property
    void eachLayerIsMarkedWhereItIsSkived(@ForAll("sheaths") MadeSheath sheath) {
        Knife knife = sheath.knife();
        SheathSpec spec = sheath.spec();
        Pattern pattern = sheath.pattern();
        List<Piece> welts = pattern.pieces().stream()
                .filter(piece -> piece.kind() == Piece.Kind.WELT)
                .toList();
        List<Piece> last = welts.stream()
                .filter(piece -> !piece.name().contains("throat part"))
                .toList();
        boolean ends = spec.kind() != SheathKind.PANELS && !knife.doubleEdged();
        double thicknessMm = last.stream()
                .mapToDouble(piece -> piece.count() * piece.thicknessMm())
                .sum();
        int holes = pattern.seams().get(0).layers().stream()
                .filter(layer -> layer.piece().startsWith("welt"))
                .mapToInt(layer -> layer.firstHole() + layer.holes().size())
                .max()
                .orElseThrow();
        double sewnMm = (holes - 1) * pattern.seams().get(0).pitch().meanMm();
        double skivedMm = Math.min(3 * thicknessMm, sewnMm / 2);

        for (Piece piece : welts) {
            List<Polyline> marks = marks(piece, Mark.Kind.SKIVE);
            assertThat(marks).as("%s of %s", piece.name(), spec).hasSize(ends && last.contains(piece) ? 1 : 0);
            for (Polyline mark : marks) {
                Polyline row = marks(piece, Mark.Kind.STITCH_ROW).get(0);
                Point onRow = mark.at(spec.welt().innerMarginMm());
                double station = row.stationOf(onRow);
                assertThat(row.at(station).distance(onRow)).isLessThan(0.01);
                assertThat(row.lengthMm() - station)
                        .as("%s of %s", piece.name(), spec)
                        .isCloseTo(skivedMm, within(spec.stitching().pitchMm() + NEAR_MM));
            }
        }
    }

    /**
     * Worked by hand: 9 mm of welt are skived over 27 mm and a margin of 3.175 mm, so they fall by 0.298 mm on each mm
     * of the row. A row is as long as its station at the least, and 1.2 times as long where it leans by 34 degrees.
     */
    @Test
    void aSectionShowsTheWeltAsThickAsItIsLeft() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT)
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        Knife knife = TestKnives.dropPoint();
        double tip = knife.landmarks().tip().x();
        PatternMaker.Made made = PatternMaker.madeUp(knife, spec);
        double before = 0;

        for (double x = tip - 21; x < tip - 2; x += 3) {
            SheathSection cut = made.sections().at(x);
            double edge = thicknessMm(cut, cut.stitches().get(0));
            double spine = thicknessMm(cut, cut.stitches().get(1));
            assertThat(edge).isCloseTo(9, within(1e-9));
            assertThat(spine).isBetween(0.5, 9.0);
            if (before > 0) {
                assertThat(spine - before).as("at %s", x).isBetween(3 * 0.298 - 0.05, 3.6 * 0.298 + 0.05);
            }
            // The face lies on the welt where it is sewn to it.
            List<Point> face = cut.face();
            assertThat(face.get(face.size() - 1).y()).isCloseTo(spine / 2, within(0.2));
            before = spine;
        }
    }

    /** The welt of a folded body ends past the tip, and its skive may begin before: there the halves come nearer. */
    @Test
    void aFoldedBodyLiesOnTheSkivedWelt() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.FOLDED)
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        Knife knife = TestKnives.dropPoint();
        PatternMaker.Made made = PatternMaker.madeUp(knife, spec);
        SheathSection whole = made.sections().at(40);
        SheathSection skived = made.sections().at(knife.landmarks().tip().x() - 1);

        assertThat(thicknessMm(whole, whole.stitches().get(0))).isCloseTo(9, within(1e-9));
        double left = thicknessMm(skived, skived.stitches().get(0));
        assertThat(left).isBetween(1.0, 8.0);
        assertThat(skived.face().get(0).y()).isCloseTo(left / 2, within(0.2));
        assertThat(skived.back().get(0).y()).isCloseTo(-left / 2, within(0.2));
    }

    /** On a flat back it lies on that. */
    @Test
    void aSkivedWeltLiesOnAFlatBack() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT)
                .withLeather(new Leather(3, 0.5, 0, Leather.Bulge.FACE))
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        Knife knife = TestKnives.dropPoint();
        SheathSection cut = PatternMaker.madeUp(knife, spec)
                .sections()
                .at(knife.landmarks().tip().x() - 15);

        assertThat(cut.welt()).hasSize(6);
        SheathSection.Layer lowest = cut.welt().get(3);
        assertThat(lowest.fromZ()).isCloseTo(-4.5, within(1e-9));
        assertThat(lowest.toZ() - lowest.fromZ()).isBetween(0.2, 2.5);
        assertThat(cut.welt().get(4).fromZ()).isCloseTo(lowest.toZ(), within(1e-9));
    }

    private static double thicknessMm(SheathSection cut, double y) {
        return cut.welt().stream()
                .filter(layer -> layer.fromY() <= y && y <= layer.toY())
                .mapToDouble(layer -> layer.toZ() - layer.fromZ())
                .sum();
    }

    private static List<Polyline> marks(Piece piece, Mark.Kind kind) {
        return piece.marks().stream()
                .filter(mark -> mark.kind() == kind)
                .map(Mark::line)
                .toList();
    }
}
