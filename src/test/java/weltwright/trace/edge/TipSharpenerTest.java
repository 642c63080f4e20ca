package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;

/** A drawn blade whose point is known, and its contour with the last 2 mm of it rounded off. */
class TipSharpenerTest {
    private static final double PX_PER_MM = 6;
    private static final OverheadScene FROM_ABOVE = new OverheadScene(PX_PER_MM, 480, 240, 0.8);
    private static final Point TIP = new Point(30, 0);
    private static final double HALF_MM = 8;
    private static final double[] STEEL = {90, 100, 110};

    /** As wide from the butt on as far as 15 mm before the tip. */
    private static double half(double x) {
        return x < -30 || x > TIP.x() ? 0 : Math.min(HALF_MM, (TIP.x() - x) * HALF_MM / 15);
    }

    private static Polyline blunt() {
        double cut = TIP.x() - 2;
        return Polyline.closed(List.of(
                        new Point(-30, -HALF_MM),
                        new Point(15, -HALF_MM),
                        new Point(cut, -half(cut)),
                        new Point(cut, half(cut)),
                        new Point(15, HALF_MM),
                        new Point(-30, HALF_MM)))
                .map(p -> FROM_ABOVE.view().pixel(Plane.GROUND.pointAbove(p)));
    }

    private static double offTipMm(Polyline contour) {
        Point tip = FROM_ABOVE.view().pixel(Plane.GROUND.pointAbove(TIP));
        return contour.points().stream().mapToDouble(tip::distance).min().orElseThrow() / PX_PER_MM;
    }

    private static Polyline sharpened(double[] paper) {
        return sharpened(at -> Math.abs(at.y()) < half(at.x()) ? STEEL : paper);
    }

    private static Polyline sharpened(Function<Point, double[]> colour) {
        return sharpened(colour, at -> true);
    }

    private static Polyline sharpened(Function<Point, double[]> colour, Predicate<Point> isPlain) {
        try (DecodedPhoto picture = FROM_ABOVE.picture(colour)) {
            return new TipSharpener(
                            picture,
                            PX_PER_MM,
                            px -> isPlain.test(FROM_ABOVE.view().intersection(px, Plane.GROUND)))
                    .sharpen(blunt());
        }
    }

    /** Lines 2.5 mm apart along both sides of the blade's axis. */
    private static boolean isLine(Point at, double widthMm) {
        double place = at.y() / 2.5 + 0.5;
        return Math.abs(place - Math.rint(place)) * 2.5 < widthMm / 2;
    }

    @Test
    void drawsTheSidesOutToWhereTheyMeet() {
        assertThat(offTipMm(blunt())).isGreaterThan(2);
        assertThat(offTipMm(sharpened(OverheadScene.grey(210)))).isLessThan(0.5);
    }

    /** Where nothing tells the ground from the blade nothing is added. */
    @Test
    void leavesWhatHasTheGroundsColour() {
        assertThat(offTipMm(sharpened(STEEL))).isGreaterThan(1.9);
    }

    /** Polished steel a little darker than the paper, but for its last 4 mm, which mirror something brighter. */
    @Test
    void drawsOutATipThatMirrorsSomethingElse() {
        assertThat(offTipMm(sharpened(at ->
                        OverheadScene.grey(Math.abs(at.y()) > half(at.x()) ? 200 : at.x() > TIP.x() - 4 ? 225 : 185))))
                .isLessThan(0.5);
    }

    /** A blade that truly ends where the contour does; its shadow reaches as far as its sides would meet. */
    @Test
    void leavesABluntEndWithAShadowBeyondIt() {
        assertThat(offTipMm(sharpened(at -> Math.abs(at.y()) > half(at.x())
                        ? OverheadScene.grey(200)
                        : at.x() > TIP.x() - 2 ? OverheadScene.grey(170) : STEEL)))
                .isGreaterThan(1.9);
    }

    /** Lines of the ground run through between the blunt end and the apex; what lies between them is bare paper. */
    @Test
    void leavesABluntEndAtLinesOfTheGround() {
        assertThat(offTipMm(sharpened(
                        at -> Math.abs(at.y()) < half(at.x()) && at.x() < TIP.x() - 2
                                ? STEEL
                                : OverheadScene.grey(isLine(at, 1) ? 90 : 200),
                        at -> !isLine(at, 1.5))))
                .isGreaterThan(1.9);
    }
}
