package weltwright.ground.rectangle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.ground.GroundObservation;
import weltwright.image.opencv.OpenCvLibraries;

/** A4 paper as a known camera sees it. */
class RectangleEdgesTest {
    private static final double X_MM = 297;
    private static final double Y_MM = 210;
    private static final CameraView VIEW = new CameraView(
            new PinholeCamera(1500, 799.5, 599.5, 0, 0),
            new Vector3(Math.PI - 0.3, 0.1, 0.05),
            new Vector3(5, -8, 420));

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void givesPointsOfTheSidesTheirPlaces() {
        List<Point> corners = RectangleEdges.corners(X_MM, Y_MM);
        List<Point> truth = new ArrayList<>();
        List<List<Point>> sides = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            List<Point> side = new ArrayList<>();
            for (double t = 0.1; t < 1; t += 0.2) {
                Point at = corners.get(k).towards(corners.get((k + 1) % 4), t);
                truth.add(at);
                side.add(VIEW.pixel(Plane.GROUND.pointAbove(at)));
            }
            sides.add(side);
        }
        List<ControlPoint> points = RectangleEdges.of(
                corners.stream()
                        .map(c -> VIEW.pixel(Plane.GROUND.pointAbove(c)))
                        .toList(),
                sides,
                X_MM,
                Y_MM);
        assertThat(points).hasSize(truth.size());
        for (int i = 0; i < truth.size(); i++) {
            ControlPoint point = points.get(i);
            assertThat(point.onGround().distance(truth.get(i))).isLessThan(0.01);
            boolean isLevel = i / 5 % 2 == 0;
            assertThat(Math.abs(
                            isLevel
                                    ? point.edge().orElseThrow().x()
                                    : point.edge().orElseThrow().y()))
                    .isEqualTo(1);
        }
        GroundObservation observation = RectangleEdges.observation(points);
        assertThat(observation.edges()).hasSize(truth.size());
        assertThat(observation.foundPart()).isEqualTo(20 / (4.0 * RectangleSideDetector.PROFILES));
    }
}
