package weltwright.camera.adjustment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.Point;
import weltwright.image.opencv.OpenCvLibraries;

/** Points of a grid as two views of a known camera show them. */
class BundleAdjustmentTest {
    private static final PinholeCamera CAMERA = new PinholeCamera(1500, 799.5, 599.5, 0.03, 0);
    private static final List<CameraView> VIEWS = List.of(
            new CameraView(CAMERA, new Vector3(Math.PI - 0.3, 0.1, 0.05), new Vector3(5, -8, 420)),
            new CameraView(CAMERA, new Vector3(Math.PI + 0.25, -0.2, 0.3), new Vector3(-10, 4, 380)));
    private static final double STRETCH_SIGMA = 1e-6;
    private static final double LEAST_PIXEL_SIGMA = 0.03;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void findsTheCameraThatShowsThePointsWhereTheyAre() {
        BundleAdjustment fit = fit(seen(0), VIEWS.size()).run();
        for (int v = 0; v < VIEWS.size(); v++) {
            CameraView found = fit.view(v);
            assertThat(found.camera().focalPx()).isCloseTo(CAMERA.focalPx(), within(0.1));
            assertThat(found.eye().minus(VIEWS.get(v).eye()).norm()).isLessThan(0.05);
            assertThat(fit.pixelSigma(v)).as("no noise but the least").isEqualTo(LEAST_PIXEL_SIGMA);
            assertThat(fit.inliers(v)).isEqualTo(seen(0).get(v).size());
        }
    }

    /** Noise of a known size, and one point that is quite wrong, which counts for little. */
    @Test
    void measuresTheNoiseAndIsNotMisledByAWrongPoint() {
        double noisePx = 0.3;
        List<List<ControlPoint>> seen = seen(noisePx);
        ControlPoint first = seen.get(0).get(0);
        seen.get(0).set(0, new ControlPoint(first.onGround(), first.pixel().plus(new Point(40, 0))));
        BundleAdjustment fit = fit(seen, VIEWS.size()).run();
        // A median of some 150 sizes is off by a tenth at most in all but one of a hundred draws.
        assertThat(fit.pixelSigma(1)).isCloseTo(noisePx, within(0.15 * noisePx));
        assertThat(fit.inliers(0)).isLessThan(seen.get(0).size());
        double sigma = Math.sqrt(fit.covariance()[0][0]);
        assertThat(fit.view(0).camera().focalPx() / CAMERA.focalPx()).isCloseTo(1, within(4 * sigma));
    }

    private static BundleAdjustment fit(List<List<ControlPoint>> seen, int views) {
        LensPrior prior = LensPrior.ofFocal(1.1 * CAMERA.focalPx(), 0.3);
        PinholeCamera rough = new PinholeCamera(prior.focalPx(), CAMERA.centreXPx(), CAMERA.centreYPx(), 0, 0);
        List<CameraView> starts = BundleAdjustment.starts(seen, rough);
        assertThat(starts).hasSize(views);
        return new BundleAdjustment(seen, prior, STRETCH_SIGMA, LEAST_PIXEL_SIGMA, starts);
    }

    private static List<List<ControlPoint>> seen(double noisePx) {
        Random random = new Random(11);
        List<List<ControlPoint>> seen = new ArrayList<>();
        for (CameraView view : VIEWS) {
            List<ControlPoint> points = new ArrayList<>();
            for (int x = -105; x <= 105; x += 15) {
                for (int y = -75; y <= 75; y += 15) {
                    Point at = new Point(x, y);
                    Point noise = new Point(random.nextGaussian(), random.nextGaussian()).times(noisePx);
                    points.add(new ControlPoint(
                            at, view.pixel(Plane.GROUND.pointAbove(at)).plus(noise)));
                }
            }
            seen.add(points);
        }
        return seen;
    }
}
