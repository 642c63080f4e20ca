package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Polygon;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Guard;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * A handle 24 mm wide and 20 mm thick from x = -100 to -6, a guard from there to 0, and a blade 20 mm wide and 100 mm
 * long. Leather gives 2 mm (common practice).
 */
class OutstandingGuardTest {
    /** From the middle to a side on which the guard hardly stands out. */
    private static final double FLUSH = 12.05;

    private static final SheathSpec OPENED = SheathSpec.standard(SheathKind.PANELS)
            .withDepth(InsertionDepth.ofHandle(40).withGuard(GuardOpening.OPEN_SIDE))
            .withStrap(Optional.of(HandleStrap.USUAL));

    /**
     * By more than leather gives beyond a line from handle to blade. From half a millimetre behind the guard to half a
     * millimetre before it that falls by 2 mm; at the guard's front it is 10.14 mm off the middle.
     */
    @ParameterizedTest
    @CsvSource({
        "24, 12.05, EDGE",
        "12.05, 24, SPINE",
        "24, 24, EDGE SPINE",
        "12.2, 12.05, EDGE",
        "12.05, 12.2, SPINE",
        "12.05, 12.1, ''"
    })
    void itStandsOutOnTheSidesWhereLeatherDoesNotGiveEnough(double toEdgeMm, double toSpineMm, String sides) {
        Optional<OutstandingGuard> guard = OutstandingGuard.in(knife(toEdgeMm, toSpineMm), OPENED);
        assertThat(guard.map(g -> String.join(
                                " ", g.sides().stream().map(Side::name).toList()))
                        .orElse(""))
                .isEqualTo(sides);
    }

    /** It is cut off straight from handle to blade; the area left, computed by JTS, is that of two plain parts. */
    @Test
    void withoutItTheKnifeIsLevel() {
        Polygon level = Polyline.closed(List.of(
                        new Point(-100, -12),
                        new Point(-6.5, -12),
                        new Point(0.5, -10),
                        new Point(100, -10),
                        new Point(100, 10),
                        new Point(0.5, 10),
                        new Point(-6.5, 12),
                        new Point(-100, 12)))
                .polygon();
        assertThat(without(24, 24).symDifference(level).getArea()).isLessThan(1);
        assertThat(without(24, FLUSH)
                        .difference(level.buffer(1e-6))
                        .getEnvelopeInternal()
                        .getMinY())
                .as("the spine's side is left alone")
                .isGreaterThan(10 - 1e-9);
        assertThat(without(FLUSH, 24)
                        .difference(level.buffer(1e-6))
                        .getEnvelopeInternal()
                        .getMaxY())
                .as("the edge's side is left alone")
                .isLessThan(-10 + 1e-9);
    }

    /** It is as thick as the handle behind it; the cutting edge begins at its front. */
    @Test
    void itsMeasuresAreThoseOfTheKnife() {
        OutstandingGuard guard = OutstandingGuard.in(knife(24, 24), OPENED).orElseThrow();
        assertThat(guard.frontMm()).isZero();
        assertThat(guard.halfThicknessMm()).isCloseTo(20.0 / 2, within(1e-6));
        assertThat(guard.heelMm()).isZero();
        assertThat(guard.knifeWithout().landmarks()).isEqualTo(knife(24, 24).landmarks());
    }

    /** Nothing is opened where that is not chosen, where no guard is marked, and for a throat that ends before it. */
    @Test
    void aSheathIsOpenedOnlyForAGuardThatGoesIn() {
        Knife knife = knife(24, 24);
        Knife unmarked = knife.withLandmarks(knife.landmarks().withGuard(Optional.empty()));
        SheathSpec seated = OPENED.withDepth(InsertionDepth.ofHandle(0));
        assertThat(OutstandingGuard.in(knife, seated)).isEmpty();
        assertThat(OutstandingGuard.in(
                        knife, OPENED.withDepth(InsertionDepth.ofHandle(0).withGuard(GuardOpening.OPEN_SIDE))))
                .isEmpty();
        assertThat(OutstandingGuard.in(unmarked, OPENED)).isEmpty();
    }

    /** A fold cannot be opened; the edge's side of a folded body can. */
    @Test
    void aGuardOverTheFoldIsRefused() {
        SheathSpec folded = OPENED.withKind(SheathKind.FOLDED);
        assertThat(OutstandingGuard.in(knife(24, FLUSH), folded)).isPresent();
        assertThatThrownBy(() -> OutstandingGuard.in(knife(FLUSH, 24), folded))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("over the spine");
    }

    @Test
    void anOpenSheathWithoutAStrapIsRefused() {
        assertThatThrownBy(() -> OutstandingGuard.in(knife(24, FLUSH), OPENED.withStrap(Optional.empty())))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("Choose a strap");
        assertThat(OutstandingGuard.in(knife(FLUSH, FLUSH), OPENED.withStrap(Optional.empty())))
                .isEmpty();
    }

    private static Polygon without(double toEdgeMm, double toSpineMm) {
        return OutstandingGuard.in(knife(toEdgeMm, toSpineMm), OPENED)
                .orElseThrow()
                .knifeWithout()
                .outline()
                .sampled(1)
                .polygon();
    }

    /** With a guard that reaches so far from the middle to either side. */
    private static Knife knife(double toEdgeMm, double toSpineMm) {
        Outline outline = Outline.polygon(List.of(
                new Point(-100, -12),
                new Point(-6, -12),
                new Point(-6, -toEdgeMm),
                new Point(0, -toEdgeMm),
                new Point(0, -10),
                new Point(100, -10),
                new Point(100, 10),
                new Point(0, 10),
                new Point(0, toSpineMm),
                new Point(-6, toSpineMm),
                new Point(-6, 12),
                new Point(-100, 12)));
        Landmarks at = new Landmarks(
                new Point(100, 0),
                new Point(0, -10),
                new Point(0, 10),
                new Point(-100, 0),
                Optional.of(new Guard(new Point(0, -10), new Point(-6, -12))));
        return new Knife(outline, at, 3, 20, CrossSectionShape.usual(0.4));
    }
}
