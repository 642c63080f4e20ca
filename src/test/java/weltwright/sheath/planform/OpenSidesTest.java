package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;

/**
 * A row from a throat at x = -40, straight down to x = 100, across, and straight back, in pieces of 0.5 mm; a welt 6 mm
 * thick with an inner margin of 4 mm, and 1/8 in from the row to the outer edge. The front of the guard is at x = 0.
 */
class OpenSidesTest {
    private static final double THROAT = -40;
    private static final double PIECE = 0.5;
    private static final double MARGIN = 25.4 / 8;
    private static final double WELT = 6;
    private static final Polyline ROW =
            row(new Point(THROAT, -15), new Point(100, -15), new Point(100, 15), new Point(THROAT, 15));
    private static final double LENGTH = 140 + 30 + 140;

    private static final SheathSpec SPEC = SheathSpec.standard(SheathKind.PANELS);

    /** Leather comes from the flat of a thick guard down to the welt no steeper than 0.8 (by judgement). */
    @Test
    void leatherFallsGentlyFromAThickGuardToTheWelt() {
        OpenSides open = past(10, Side.EDGE);
        double stitch = ROW.at(open.fromMm()).x();
        assertThat((10 - WELT / 2) / stitch).isLessThanOrEqualTo(0.8);
        assertThat((10 - WELT / 2) / (stitch - PIECE)).as("not later").isGreaterThan(0.8);
        assertThat(open.toMm()).isEqualTo(LENGTH);
    }

    /** Two millimetres past a thin guard (by judgement) the welt ends, and a stitch margin on is the first stitch. */
    @Test
    void pastAThinGuardTheWeltEndsAtOnce() {
        double stitch = past(2, Side.EDGE).fromMm();
        assertThat(ROW.at(stitch - MARGIN).x()).isBetween(2.0, 2 + PIECE);
    }

    /** No stitch is nearer to the guard than the welt's inner margin, here 9 mm. */
    @Test
    void noStitchIsNearerThanTheInnerMargin() {
        SheathSpec spec = SPEC.withWelt(new WeltSpec(OptionalInt.empty(), 9, List.of(), false));
        OpenSides open = OpenSides.past(guard(2, 0, Side.EDGE), ROW, spec, WELT);
        assertThat(ROW.at(open.fromMm()).x()).isBetween(9.0, 9 + PIECE);
    }

    /** On the spine's side as on the edge's, but that a welt along the edge alone is missing under it there. */
    @Test
    void bothSidesAreOpenedAlike() {
        OpenSides both = past(10, Side.EDGE, Side.SPINE);
        assertThat(LENGTH - both.toMm()).isCloseTo(both.fromMm(), within(1e-9));
        OpenSides spine = past(10, Side.SPINE);
        assertThat(spine.fromMm()).isZero();
        assertThat(spine.toMm()).isEqualTo(both.toMm());

        SheathSpec edgeWelt = SPEC.withKind(SheathKind.PANELS_EDGE_WELT);
        OpenSides bare = OpenSides.past(guard(10, 0, Side.SPINE), ROW, edgeWelt, WELT);
        assertThat(10 / ROW.at(bare.toMm()).x()).as("steepness down to no welt").isBetween(0.8 - 0.04, 0.8 + 1e-9);
    }

    /**
     * The welt's end is square to the row. On a row that runs aslant by an angle, the corner of the end lies nearer to
     * the guard by the sine of it, times the wider of both margins.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5})
    void theCornerOfTheWeltsEndIsClearOfTheGuard(double slantRad) {
        Point end = new Point(100, -15 - 140 * Math.tan(slantRad));
        Polyline aslant = row(new Point(THROAT, -15), end);
        OpenSides open = OpenSides.past(guard(2, 0, Side.EDGE), aslant, SPEC, WELT);
        double corner = aslant.at(open.fromMm() - MARGIN).x() - 4 * Math.sin(slantRad);
        assertThat(corner).isBetween(2.0, 2 + PIECE);
    }

    /** A blade that ends, or is sewn to its end, before the leather is down on a welt that is clear of the guard. */
    @ParameterizedTest
    @CsvSource({"8, 10, false", "20, 10, true", "1, 2, false", "5, 2, false", "5.9, 2, true"})
    void aBladeTooShortPastTheGuardIsRefused(double rowToMm, double halfThicknessMm, boolean longEnough) {
        Polyline row = row(new Point(THROAT, -15), new Point(rowToMm, -15));
        OutstandingGuard guard = guard(halfThicknessMm, 0, Side.EDGE);
        if (longEnough) {
            assertThat(OpenSides.past(guard, row, SPEC, WELT).fromMm()).isLessThan(row.lengthMm());
        } else {
            assertThatThrownBy(() -> OpenSides.past(guard, row, SPEC, WELT))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("blade");
        }
    }

    /** The maker is told of the length from the outer edge of the throat, and of the bare cutting edge. */
    @Test
    void theMakerIsToldWhatIsOpen() {
        OpenSides open = OpenSides.past(guard(10, 3, Side.EDGE), ROW, SPEC, WELT);
        Advice.OpenForGuard told = open.advice().orElseThrow();
        double firstStitch = ROW.at(open.fromMm()).x();
        assertThat(told.sides()).containsExactly(Side.EDGE);
        assertThat(told.openMm()).isCloseTo(firstStitch - THROAT + MARGIN, within(1e-9));
        assertThat(told.edgeMm()).as("from the heel to the welt").isCloseTo(firstStitch - MARGIN - 3, within(1e-9));

        OpenSides spine = past(10, Side.SPINE);
        assertThat(spine.advice().orElseThrow())
                .isEqualTo(new Advice.OpenForGuard(List.of(Side.SPINE), LENGTH - spine.toMm() + MARGIN, 0));
        assertThat(OpenSides.past(guard(10, 30, Side.EDGE), ROW, SPEC, WELT)
                        .advice()
                        .orElseThrow()
                        .edgeMm())
                .as("the edge begins past the welt's end")
                .isZero();
    }

    /** What is kept of the welt begins and ends a margin before the first and the last stitch, in its full width. */
    @Test
    void theWeltIsCutOffAtTheOpenSides() {
        Region welt = Region.box(THROAT, -18, 103, 18).difference(Region.box(THROAT - 1, -11, 96, 11));
        OpenSides open = past(10, Side.EDGE, Side.SPINE);
        double end = ROW.at(open.fromMm()).x() - MARGIN;
        Region both = open.cutOff(welt);
        assertThat(both.extent().getMinX()).isCloseTo(end, within(1e-6));
        assertThat(both.area().getArea()).isCloseTo(2 * (96 - end) * 7 + 7 * 36, within(1e-6));

        Region edge = past(10, Side.EDGE).cutOff(welt);
        assertThat(welt.area().getArea() - edge.area().getArea()).isCloseTo((end - THROAT) * 7, within(1e-6));
        assertThat(edge.contains(new Point(THROAT + 1, 15), 0)).isTrue();
        Region alongEdge = Region.box(THROAT, -18, 103, -11);
        assertThat(past(10, Side.SPINE).cutOff(alongEdge)).as("no welt there").isEqualTo(alongEdge);
    }

    /** Nearer to the throat than the first stitch of a side that side is not sewn. */
    @Test
    void anOpenSideIsNotSewn() {
        OpenSides edge = past(10, Side.EDGE);
        OpenSides spine = past(10, Side.SPINE);
        double first = ROW.at(edge.fromMm()).x();
        OptionalDouble spineY = OptionalDouble.of(15);
        assertThat(edge.sewnAt(first - 1, -15, spineY)).containsExactly(15.0);
        assertThat(edge.sewnAt(first + 1, -15, spineY)).containsExactly(-15.0, 15.0);
        assertThat(spine.sewnAt(first - 1, -15, spineY)).containsExactly(-15.0);
        assertThat(spine.sewnAt(first + 1, -15, spineY)).containsExactly(-15.0, 15.0);
        assertThat(OpenSides.none(ROW).sewnAt(THROAT, -15, spineY)).containsExactly(-15.0, 15.0);
        assertThat(OpenSides.none(ROW).sewnAt(THROAT, -15, OptionalDouble.empty()))
                .containsExactly(-15.0);
    }

    private static OpenSides past(double halfThicknessMm, Side... sides) {
        return OpenSides.past(guard(halfThicknessMm, 0, sides), ROW, SPEC, WELT);
    }

    private static OutstandingGuard guard(double halfThicknessMm, double heelMm, Side... sides) {
        return new OutstandingGuard(0, halfThicknessMm, heelMm, List.of(sides), TestKnives.dropPoint());
    }

    private static Polyline row(Point... corners) {
        return Polyline.open(List.of(corners)).resampled(PIECE);
    }
}
