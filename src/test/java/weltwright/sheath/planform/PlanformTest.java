package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import weltwright.error.UserFacingException;
import weltwright.fit.Cavity;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** A sheath for a blade that is a box of 20 mm by 100 mm; welt, margins and ease are the usual. */
class PlanformTest {
    private static final double EASE = 0.8;
    private static final double INNER = 4;
    private static final double MARGIN = 25.4 / 8;
    private static final Knife BOX = TestKnives.wedge(3.5, 0.4);

    /** As high as wide as the sewn sheath is; a folded one ends at its fold. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void itsExtentIsThatOfTheSewnSheath(SheathKind kind) {
        Planform form = form(kind, 6);
        Envelope extent = form.extent();
        double row = 10 + EASE + INNER;
        Envelope sewn = form.sewn().extent();
        assertThat(extent.getWidth()).isCloseTo(sewn.getWidth(), within(0.05));
        assertThat(extent.getHeight()).isCloseTo(sewn.getHeight(), within(0.05));
        assertThat(extent.getMaxY()).isCloseTo(sewn.getMaxY(), within(0.05));
        assertThat(extent.getMinY()).isCloseTo(-row - MARGIN, within(0.05));
        if (kind != SheathKind.PANELS_EDGE_WELT) {
            assertThat(extent.getMaxY()).isCloseTo(kind == SheathKind.FOLDED ? 10 + EASE : row + MARGIN, within(0.05));
        }
    }

    /** An eyelet for leather of 3 mm has a cap of 8.5 mm; 3.5 mm of leather are left between that and the tip. */
    @Test
    void theDrainIsLinedWhereThatIsChosen() {
        SheathSpec panels = SheathSpec.standard(SheathKind.PANELS);
        Planform lined = form(panels.withDrain(new DrainHole(4, true)), 6);
        assertThat(lined.eyelet().orElseThrow().capMm()).isEqualTo(8.5);
        assertThat(lined.drain().x() - 100).isCloseTo(8.5 / 2 + 3.5, within(1e-6));
        assertThat(form(panels, 6).eyelet()).isEmpty();
        assertThat(form(panels, 6).drain().x() - 100).isCloseTo(4.0 / 2 + 3.5, within(1e-6));
    }

    /**
     * A welt along the edge alone ends 10 mm from the tip towards the throat, or three times its thickness, but no
     * farther than half of the sheath (common practice). Its end is square to the row, here to the box.
     */
    @ParameterizedTest
    @CsvSource({"0, 3, 10", "0, 6, 18", "60, 15, 20"})
    void aWeltAlongTheEdgeRunsOnRoundTheTip(double throatMm, double weltMm, double pastTipMm) {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS_EDGE_WELT);
        spec = spec.withStitching(spec.stitching().withPitchMm(3));
        Planform form = new Planform(new Cavity(BOX, throatMm, EASE), spec, weltMm, Optional.empty());
        double end = form.welt().boundary().points().stream()
                .filter(p -> p.y() > 10)
                .mapToDouble(Point::x)
                .min()
                .orElseThrow();
        assertThat(100 - end).isCloseTo(pastTipMm, within(1.0));
    }

    /**
     * In a folded body it ends where the inside of the leather, half the welt off the middle, meets the fold's round.
     */
    @ParameterizedTest
    @ValueSource(doubles = {3, 6})
    void theWeltOfAFoldedBodyEndsBeforeTheLeatherDrawsTogether(double weltMm) {
        Planform form = form(SheathKind.FOLDED, weltMm);
        double end = form.foldMm() - weltMm / 2;
        assertThat(form.welt().extent().getMaxY()).isBetween(end - 0.6, end + 0.01);
    }

    /**
     * A welt that ends is skived over three times its thickness, from the last place that is sewn on it; but over no
     * more than half of its length (common practice). There its thickness falls evenly to nothing, a stitch margin on.
     */
    @ParameterizedTest
    @EnumSource(
            value = SheathKind.class,
            names = {"FOLDED", "PANELS_EDGE_WELT"})
    void theEndOfAWeltIsSkived(SheathKind kind) {
        Planform form = form(kind, 6);
        double from = form.skivedFromMm();
        double end = form.weltedMm() + MARGIN;
        assertThat(form.weltedMm() - from).isCloseTo(18, within(1e-9));
        assertThat(form.weltShare(form.row().at(from - 1))).isEqualTo(1);
        assertThat(form.weltShare(form.row().at((from + end) / 2))).isCloseTo(0.5, within(1e-6));
        assertThat(form.weltShare(form.row().at(end - 0.01))).isCloseTo(0, within(1e-3));

        Planform shortOne = new Planform(new Cavity(BOX, 60, EASE), spec(kind), 18, Optional.empty());
        assertThat(shortOne.skivedFromMm()).isCloseTo(shortOne.weltedMm() / 2, within(1e-9));
    }

    /** Where the sheath is opened for a guard, here 12 mm past the throat, the length of the welt begins there. */
    @Test
    void aWeltPastAGuardIsSkivedOverHalfOfWhatIsLeft() {
        OutstandingGuard guard = new OutstandingGuard(72, 8, 72, List.of(Side.EDGE), BOX);
        Planform form =
                new Planform(new Cavity(BOX, 60, EASE), spec(SheathKind.PANELS_EDGE_WELT), 15, Optional.of(guard));
        double from = form.openSides().fromMm();
        assertThat(form.row().at(from).x()).isGreaterThan(72 + INNER - 0.01);
        assertThat(form.skivedFromMm()).isCloseTo((from + form.weltedMm()) / 2, within(1e-9));
    }

    /** Leather lies on the welt at the edge; at the spine too, or on the other panel, which may lie flat below it. */
    @Test
    void panelsLieOnTheWeltOrOnTheOtherPanel() {
        Cavity cavity = new Cavity(BOX, 0, EASE);
        var leather = SheathSpec.standard(SheathKind.PANELS).leather();
        for (boolean alone : new boolean[] {false, true}) {
            List<Point> both = form(SheathKind.PANELS, 6)
                    .panel(20, -15, 15, cavity.section(20), leather, alone)
                    .inside();
            List<Point> edge = form(SheathKind.PANELS_EDGE_WELT, 6)
                    .panel(20, -15, 15, cavity.section(20), leather, alone)
                    .inside();
            assertThat(both.get(0)).isEqualTo(new Point(-15, 3));
            assertThat(both.get(both.size() - 1)).isEqualTo(new Point(15, 3));
            assertThat(edge.get(0)).isEqualTo(new Point(-15, 3));
            assertThat(edge.get(edge.size() - 1)).isEqualTo(new Point(15, alone ? -3 : 0));
        }
        List<Point> half = form(SheathKind.FOLDED, 6)
                .half(20, -15, cavity.section(20), leather)
                .inside();
        assertThat(half.get(0)).as("half the welt off the middle").isEqualTo(new Point(-15, 3));
    }

    /** All along it is sewn, from the throat round the tip; a folded one up to a margin before the welt's end. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void itIsSewnAsFarAsTheRowOrTheWeltGoes(SheathKind kind) {
        Planform form = form(kind, 6);
        Polyline row = form.row();
        assertThat(row.points().get(0).x()).as("a margin below the throat").isCloseTo(MARGIN, within(1e-6));
        if (kind == SheathKind.FOLDED) {
            Point last = row.at(form.sewnMm());
            assertThat(form.welt().contains(last, MARGIN - 0.5)).isTrue();
            assertThat(form.welt().contains(row.at(form.sewnMm() + MARGIN + 0.5), 0))
                    .isFalse();
        } else {
            assertThat(form.sewnMm()).isCloseTo(row.lengthMm(), within(1e-9));
        }
    }

    /** A welt of 20 mm would keep the leather from meeting in a fold 21.6 mm wide. */
    @Test
    void aWeltTooThickForAFoldIsRefused() {
        assertThatThrownBy(() -> form(SheathKind.FOLDED, 60))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("60.0 mm")
                .hasMessageContaining("fewer layers");
    }

    /** Four stitches at least hold a sheath. */
    @Test
    void aRowOfLessThanFourStitchesIsRefused() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS);
        Cavity cavity = new Cavity(BOX, 90, EASE);
        double row = new Planform(cavity, spec, 6, Optional.empty()).row().lengthMm();
        assertThat(new Planform(cavity, withPitch(spec, row / 4 - 0.01), 6, Optional.empty()).sewnMm())
                .isEqualTo(row);
        assertThatThrownBy(() -> new Planform(cavity, withPitch(spec, row / 4 + 0.01), 6, Optional.empty()))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(Math.round(row) + " mm")
                .hasMessageContaining("smaller pitch");
        OutstandingGuard guard = new OutstandingGuard(92, 8, 92, List.of(Side.EDGE), BOX);
        assertThatThrownBy(() -> new Planform(cavity, withPitch(spec, row / 4 - 0.01), 6, Optional.of(guard)))
                .as("of what is left past a guard")
                .isInstanceOf(UserFacingException.class);
    }

    private static SheathSpec withPitch(SheathSpec spec, double pitchMm) {
        return spec.withStitching(spec.stitching().withPitchMm(pitchMm));
    }

    private static SheathSpec spec(SheathKind kind) {
        return withPitch(SheathSpec.standard(kind), 3);
    }

    private static Planform form(SheathKind kind, double weltMm) {
        return form(SheathSpec.standard(kind), weltMm);
    }

    private static Planform form(SheathSpec spec, double weltMm) {
        return new Planform(new Cavity(BOX, 0, EASE), spec, weltMm, Optional.empty());
    }
}
