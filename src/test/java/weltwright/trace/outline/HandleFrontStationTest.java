package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;

/** A drawn knife of 100 by 20 mm whose handle, brown with pale pins and dark stripes, ends at a known place. */
class HandleFrontStationTest {
    private static final OverheadScene FROM_ABOVE = new OverheadScene(4, 480, 200, 0.8);

    private static double[] handle(Point at) {
        if (new Point(at.x() + 35, at.y()).norm() < 2) {
            return OverheadScene.grey(200);
        }
        return Math.sin(at.x()) > 0.7 ? new double[] {40, 60, 90} : new double[] {60, 90, 140};
    }

    @ParameterizedTest
    @ValueSource(doubles = {-12, 3.3, 17})
    void findsWhereTheHandleEnds(double frontX) {
        Polyline outline = Polyline.closed(
                List.of(new Point(-50, -10), new Point(50, -10), new Point(50, 10), new Point(-50, 10)));
        try (DecodedPhoto picture = FROM_ABOVE.picture(at -> Math.abs(at.x()) > 50 || Math.abs(at.y()) > 10
                ? OverheadScene.grey(220)
                : at.x() < frontX ? handle(at) : OverheadScene.grey(150))) {
            HandleFrontStation.Front front = HandleFrontStation.find(
                    picture, FROM_ABOVE.view(), Plane.GROUND, outline, new RigidMotion(0, new Point(0, 0)));
            assertThat(front.x()).isCloseTo(frontX, within(0.5));
            assertThat(front.atLimit()).isFalse();
        }
    }
}
