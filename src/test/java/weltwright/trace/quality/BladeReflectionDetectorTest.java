package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.trace.DrawnSquaredPaper;
import weltwright.trace.OverheadScene;

/** Drawn blades on drawn lines, seen straight from above: what each of them shows is as it was drawn. */
class BladeReflectionDetectorTest {
    private static final double LINE_HALF_MM = 0.15;
    private static final double PAPER = 190;
    private static final double LINE = 130;
    private static final double STEEL = 150;
    private static final OverheadScene FROM_ABOVE = new OverheadScene(6);
    private static final DrawnSquaredPaper SQUARES = new DrawnSquaredPaper(10);

    /** 90 mm long and 24 mm wide. */
    private static final Polyline BLADE =
            Polyline.closed(List.of(new Point(-45, -12), new Point(15, -12), new Point(45, 12), new Point(-45, 12)));

    /** A flat mirror shows a lattice as another one, turned: the law of reflection, seen from far off. */
    @Test
    void aBladeThatShowsTheLinesTurnedIsAMirror() {
        RigidMotion turned = new RigidMotion(Math.toRadians(31), new Point(3, 4));
        assertThat(mirrors(at -> 0.85 * ground(turned.apply(at)))).isTrue();
    }

    /** As long as the print is seen at all: steel that throws back half of what falls on it. */
    @Test
    void aDullMirrorIsOneToo() {
        RigidMotion turned = new RigidMotion(Math.toRadians(70), new Point(1, 2));
        assertThat(mirrors(at -> 0.5 * ground(turned.apply(at)) + 40)).isTrue();
    }

    @Test
    void plainSteelIsNone() {
        assertThat(mirrors(at -> STEEL)).isFalse();
    }

    /** Three grooves along a blade are ground into many. Common practice. */
    @Test
    void groovesAlongTheBladeAreNone() {
        assertThat(mirrors(at -> {
                    double across = Math.abs(at.y() - 2 * Math.round(at.y() / 2));
                    return across < LINE_HALF_MM ? STEEL - 60 : STEEL;
                }))
                .isFalse();
    }

    /** The bars of a sash of four panes: two lines that cross, all through the blade. Common practice. */
    @Test
    void aWindowThatIsMirroredIsNone() {
        assertThat(mirrors(at -> {
                    double fromBar = Math.min(Math.abs(at.x() + at.y() / 2 + 20), Math.abs(at.y() - at.x() / 2 - 10));
                    return fromBar < 2 * LINE_HALF_MM ? STEEL - 60 : STEEL;
                }))
                .isFalse();
    }

    /** Out of focus, the step at its edge reaches a millimetre into the blade, many times as strong as a line. */
    @Test
    void aDarkBladeOutOfFocusIsNone() {
        OverheadScene outOfFocus = new OverheadScene(6, 720, 720, 3);
        assertThat(mirrors(outOfFocus, at -> 20)).isFalse();
    }

    private static boolean mirrors(ToDoubleFunction<Point> onBlade) {
        return mirrors(FROM_ABOVE, onBlade);
    }

    private static boolean mirrors(OverheadScene scene, ToDoubleFunction<Point> onBlade) {
        try (DecodedPhoto picture =
                scene.picture(at -> OverheadScene.grey(isHidden(at) ? onBlade.applyAsDouble(at) : ground(at)))) {
            return BladeReflectionDetector.detects(
                    picture, scene.view(), BLADE, SQUARES.lines(), OverheadScene.grey(PAPER - LINE));
        }
    }

    private static boolean isHidden(Point at) {
        return Math.abs(at.y()) < 12 && at.x() > -45 && at.x() < 15 + 30 * (at.y() + 12) / 24;
    }

    private static double ground(Point at) {
        return SQUARES.offLine(at) < LINE_HALF_MM ? LINE : PAPER;
    }
}
