package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.trace.outline.UncertainStretch;

/**
 * Outlines drawn by hand: whole knives of the trade's common shapes, and what is left of one whose blade was not seen.
 */
class BladeCheckTest {
    private static final double HANDLE_MM = 24;

    private static final Silhouette POINTED = knife(List.of(p(0, -12), p(70, -12), p(100, 8), p(60, 12)), p(100, 8));

    @Test
    void letsPointedBladesBe() {
        assertThatCode(() -> BladeCheck.check(POINTED, List.of())).doesNotThrowAnyException();
    }

    /** Its edge is straight and its spine falls to it at 60 degrees: common practice. */
    @Test
    void letsASheepsfootBe() {
        Silhouette sheepsfoot =
                knife(List.of(p(0, -12), p(90, -12), p(90 - 24 / Math.tan(Math.PI / 3), 12)), p(90, -12));
        assertThatCode(() -> BladeCheck.check(sheepsfoot, List.of())).doesNotThrowAnyException();
    }

    /** A cleaver ends square, and is twice as wide as its handle: common practice. */
    @Test
    void letsACleaverBe() {
        Silhouette cleaver = knife(List.of(p(0, -36), p(150, -36), p(150.5, 12)), p(150.5, 12));
        assertThatCode(() -> BladeCheck.check(cleaver, List.of())).doesNotThrowAnyException();
    }

    /** A dagger of 25 by 5 cm at its guard is about as wide for its length as daggers are: common practice. */
    @Test
    void letsAWideGuardBe() {
        assertThatCode(() -> BladeCheck.checkSolidityAndOverhang(Polyline.closed(List.of(
                        p(-120, -14),
                        p(-8, -12),
                        p(-8, -25),
                        p(0, -25),
                        p(0, -14),
                        p(130, 0),
                        p(0, 14),
                        p(0, 25),
                        p(-8, 25),
                        p(-8, 12),
                        p(-120, 14)))))
                .doesNotThrowAnyException();
    }

    /** A pencil of 175 mm across the point of a kitchen knife. */
    @Test
    void refusesAPencilAcrossThePoint() {
        assertThatThrownBy(() -> BladeCheck.checkSolidityAndOverhang(Polyline.closed(List.of(
                        p(-105, -12),
                        p(0, -12),
                        p(150, -3),
                        p(150, -90),
                        p(157, -90),
                        p(157, 85),
                        p(150, 85),
                        p(150, 3),
                        p(0, 10),
                        p(-105, 12)))))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("touches the knife");
    }

    /** A pencil of 7 mm leans on the back of a kitchen knife, whose shadow fills the gap up to 50 mm from its end. */
    @Test
    void refusesAPencilAlongTheBack() {
        assertThatThrownBy(() -> BladeCheck.checkSolidityAndOverhang(Polyline.closed(List.of(
                        p(-105, -12),
                        p(0, -12),
                        p(150, -3),
                        p(150, 3),
                        p(40, 18),
                        p(-50, 25),
                        p(-50, 18),
                        p(0, 14),
                        p(0, 10),
                        p(-105, 12)))))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("touches the knife");
    }

    @Test
    void refusesAHandleAlone() {
        Silhouette handle = knife(List.of(p(30, -12), p(30.5, 12)), p(30.5, 12));
        assertThatThrownBy(() -> BladeCheck.check(handle, List.of()))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("tip");
    }

    @Test
    void refusesABladeOfWhichNoEdgeWasSeen() {
        UncertainStretch blade = new UncertainStretch(p(2, -12), p(2, 12));
        assertThatThrownBy(() -> BladeCheck.check(POINTED, List.of(blade)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("hardly stands out");
    }

    /** Where the sides end they are 18 mm apart; the guess that joins them runs aslant and so has a tip. */
    @Test
    void refusesABladeOfWhichTheTipWasNotSeen() {
        Silhouette cut = knife(List.of(p(70, -12), p(50, 12)), p(70, -12));
        assertThatCode(() -> BladeCheck.check(cut, List.of())).doesNotThrowAnyException();
        UncertainStretch across = new UncertainStretch(p(68, -12), p(55, 6));
        assertThatThrownBy(() -> BladeCheck.check(cut, List.of(across)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("tip");
    }

    @Test
    void letsOneSideOfABladeBeGuessed() {
        UncertainStretch edge = new UncertainStretch(p(2, -12), p(68, -12));
        assertThatCode(() -> BladeCheck.check(POINTED, List.of(edge))).doesNotThrowAnyException();
    }

    /** A handle 110 mm long behind the blade, of which the lower side is given from the heel on, then the upper one. */
    private static Silhouette knife(List<Point> blade, Point tip) {
        List<Point> corners = new ArrayList<>(List.of(p(-110, HANDLE_MM / 2), p(-110, -HANDLE_MM / 2)));
        corners.add(p(-0.5, -HANDLE_MM / 2));
        corners.addAll(blade);
        corners.add(p(0, HANDLE_MM / 2));
        return new Silhouette(
                Outline.polygon(corners),
                new Landmarks(tip, p(0, -HANDLE_MM / 2), p(0, HANDLE_MM / 2), p(-110, 0)),
                true);
    }

    private static Point p(double x, double y) {
        return new Point(x, y);
    }
}
