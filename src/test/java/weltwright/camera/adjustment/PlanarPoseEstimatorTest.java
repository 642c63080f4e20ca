package weltwright.camera.adjustment;

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
import weltwright.image.opencv.OpenCvLibraries;

/** Points of a plane seen from a known pose without distortion; OpenCV takes their pixels in single precision. */
class PlanarPoseEstimatorTest {
    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void findsThePose() {
        PinholeCamera camera = new PinholeCamera(1500, 799.5, 599.5, 0, 0);
        CameraView truth = new CameraView(camera, new Vector3(Math.PI - 0.3, 0.1, 0.05), new Vector3(5, -8, 420));
        List<ControlPoint> seen = new ArrayList<>();
        for (int x = -100; x <= 100; x += 50) {
            for (int y = -60; y <= 60; y += 30) {
                Point at = new Point(x, y);
                seen.add(new ControlPoint(at, truth.pixel(Plane.GROUND.pointAbove(at))));
            }
        }
        CameraView found = PlanarPoseEstimator.of(seen, camera);
        assertThat(found.eye().minus(truth.eye()).norm()).isLessThan(0.05);
        for (ControlPoint point : seen) {
            assertThat(found.pixel(Plane.GROUND.pointAbove(point.onGround())).distance(point.pixel()))
                    .isLessThan(0.01);
        }
    }
}
