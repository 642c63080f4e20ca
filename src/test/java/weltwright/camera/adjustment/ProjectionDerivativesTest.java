package weltwright.camera.adjustment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;

/** Against {@link CameraView}, and its central differences by each parameter. */
class ProjectionDerivativesTest {
    private static final double[] PARAMETERS = {
        Math.log(1500), 0.04, -0.02, 755.5, 565.5, 2.8, 0.2, -0.3, 12, -20, 400, 0.01
    };
    private static final Point PLACE = new Point(62, -41);

    @Test
    void areThoseOfTheCameraModel() {
        ProjectionDerivatives projection = new ProjectionDerivatives(PARAMETERS);
        projection.project(PLACE);
        Point seen = pixel(PARAMETERS);
        assertThat(projection.x).isCloseTo(seen.x(), within(1e-9));
        assertThat(projection.y).isCloseTo(seen.y(), within(1e-9));
        for (int k = 0; k < PARAMETERS.length; k++) {
            double step = 1e-5 * Math.max(1, Math.abs(PARAMETERS[k]));
            Point slope = pixel(with(k, step)).minus(pixel(with(k, -step))).times(0.5 / step);
            double close = 1e-5 * (1 + slope.norm());
            assertThat(projection.dx[k]).as("x by parameter " + k).isCloseTo(slope.x(), within(close));
            assertThat(projection.dy[k]).as("y by parameter " + k).isCloseTo(slope.y(), within(close));
        }
    }

    private static double[] with(int k, double more) {
        double[] p = PARAMETERS.clone();
        p[k] += more;
        return p;
    }

    private static Point pixel(double[] p) {
        double stretch = Math.exp(p[11] / 2);
        CameraView view = BundleAdjustment.view(p);
        return view.pixel(Plane.GROUND.pointAbove(new Point(PLACE.x() * stretch, PLACE.y() / stretch)));
    }
}
