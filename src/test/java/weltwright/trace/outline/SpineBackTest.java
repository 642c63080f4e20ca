package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.knife.HandleSection;
import weltwright.knife.ThicknessProfile;
import weltwright.trace.OverheadScene;

/**
 * A bright blade on a dark mat, beside the foot of a camera straight above it: by similar triangles the back of its
 * spine shows as wide as the spine's thickness times the distance from that foot over the camera's height of 400 mm.
 */
class SpineBackTest {
    private static final OverheadScene FROM_ABOVE = new OverheadScene(5);
    private static final double SPINE_MM = 6;
    private static final double NEAR_Y = 40;
    private static final double WIDTH_MM = SPINE_MM * NEAR_Y / 400;
    private static final RigidMotion SAME = new RigidMotion(0, new Point(0, 0));
    private static final Polyline FACE = Polyline.closed(
                    List.of(new Point(-60, NEAR_Y), new Point(60, NEAR_Y), new Point(60, 60), new Point(-60, 60)))
            .resampled(0.16);

    private static Point[] displacements(Function<Point, double[]> drawn) {
        return displacements(drawn, at -> 0);
    }

    private static Point[] displacements(Function<Point, double[]> drawn, ToDoubleFunction<Point> lineVisibility) {
        OutlineParallaxCorrection parallax = new OutlineParallaxCorrection(
                new ThicknessParallax(SPINE_MM, 0.5, 18, ThicknessProfile.NONE, HandleSection.ROUND, false),
                FROM_ABOVE.view(),
                Plane.GROUND,
                SAME,
                FACE,
                -50,
                60,
                -60,
                0.5,
                1);
        try (DecodedPhoto picture = FROM_ABOVE.picture(drawn)) {
            return new SpineBack(
                            picture,
                            p -> FROM_ABOVE.view().pixel(Plane.GROUND.pointAbove(p)),
                            FACE,
                            parallax,
                            px -> lineVisibility.applyAsDouble(FROM_ABOVE.view().intersection(px, Plane.GROUND)))
                    .displacements(-50, 60);
        }
    }

    private static boolean isFace(Point at) {
        return Math.abs(at.x()) < 60 && at.y() > NEAR_Y && at.y() < 60;
    }

    private static double backMm(double x) {
        return WIDTH_MM * ThicknessParallax.taper((x + 50) / 110);
    }

    /** @param back grey level of the back; the mat's is 40 */
    @ParameterizedTest
    @ValueSource(doubles = {65, 90})
    void findsABackThatIsNearlyAsDarkAsTheMat(double back) {
        Point[] moves = displacements(at -> OverheadScene.grey(
                isFace(at)
                        ? 200
                        : Math.abs(at.x()) < 60 && at.y() <= NEAR_Y && at.y() > NEAR_Y - backMm(at.x()) ? back : 40));
        for (int i = 0; i < moves.length; i++) {
            Point p = FACE.points().get(i);
            boolean isNear = p.y() < NEAR_Y + 1 && p.x() > -49 && p.x() < 20;
            if (isNear) {
                assertThat(moves[i].norm() / 5).as("at %s", p).isCloseTo(backMm(p.x()), within(0.12));
            } else if (p.y() > NEAR_Y + 1 && p.x() < 59) {
                assertThat(moves[i].norm()).isZero();
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {40, 220})
    void findsNoneOnEvenGround(double ground) {
        assertThat(Arrays.stream(displacements(at -> OverheadScene.grey(isFace(at) ? 130 : ground)))
                        .allMatch(move -> move.norm() == 0))
                .isTrue();
    }

    /**
     * Lines 8 mm apart end at the back's rim, of which nothing else shows; or some of them, or all, at the face's.
     * Where it is but two of three, the edge may as well lie a little inside of the face.
     */
    @ParameterizedTest
    @CsvSource({"0, true", "1, false", "3, false"})
    void findsABackAsDarkAsTheMatByTheEndsOfLines(int ofThreeEndAtFace, boolean found) {
        Point[] moves = displacements(at -> OverheadScene.grey(isFace(at) ? 200 : 40), at -> {
            int line = (int) Math.round(at.x() / 8);
            boolean endsAtFace = Math.floorMod(line, 3) < ofThreeEndAtFace;
            return Math.abs(at.x() - 8 * line) > 0.25
                    ? 0
                    : at.y() > NEAR_Y - (endsAtFace ? 0 : backMm(at.x())) ? -1 : 1;
        });
        for (int i = 0; i < moves.length; i++) {
            Point p = FACE.points().get(i);
            if (p.y() < NEAR_Y + 1 && p.x() > -49 && p.x() < 20) {
                assertThat(moves[i].norm() / 5).as("at %s", p).isCloseTo(found ? backMm(p.x()) : 0, within(0.12));
            }
        }
    }

    /** A shadow beside a blade that lies 10 mm high is blurred over millimetres. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 3})
    void takesASoftShadowForNoBack(double sigmaMm) {
        assertThat(Arrays.stream(displacements(at -> OverheadScene.grey(
                                isFace(at) ? 120 : 220 - 120 * Math.exp(-Math.pow((NEAR_Y - at.y()) / sigmaMm, 2)))))
                        .allMatch(move -> move.norm() == 0))
                .isTrue();
    }
}
