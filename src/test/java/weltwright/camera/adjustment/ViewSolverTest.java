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
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.opencv.OpenCvLibraries;

/** The solver on sheets seen by cameras that are known because the test made them. */
class ViewSolverTest {
    private static final int WIDTH = 3024;
    private static final int HEIGHT = 2268;
    private static final LensPrior ANY = LensPrior.ofFocal(2400, 0.5);

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void findsCameraAndPoseOfATiltedView() {
        CameraView truth = view(2271.5, 0.02, -0.01, 12);
        ViewSolver.Solution found = ViewSolver.solve(seen(truth, 0, 0), WIDTH, HEIGHT, ANY);
        assertThat(found.view().camera().focalPx()).isCloseTo(2271.5, within(0.5));
        assertThat(found.view().camera().k1()).isCloseTo(0.02, within(1e-3));
        assertThat(found.view().eye().minus(truth.eye()).norm()).isLessThan(0.1);
    }

    @Test
    void isNotLedAstrayByWrongPoints() {
        CameraView truth = view(2271.5, 0.0, 0.0, 8);
        ViewSolver.Solution found = ViewSolver.solve(seen(truth, 0.05, 9), WIDTH, HEIGHT, ANY);
        assertThat(found.view().camera().focalPx()).isCloseTo(2271.5, within(12.0));
        assertThat(found.pixelSigma()).isBetween(0.03, 0.09);
    }

    /** Source: the definition of a standard deviation, over views of the same camera with fresh noise. */
    @Test
    void saysHowSureItIsOfTheFocalLength() {
        CameraView truth = view(2271.5, 0.0, 0.0, 8);
        double squares = 0;
        double claimed = 0;
        int views = 40;
        for (int i = 0; i < views; i++) {
            ViewSolver.Solution found = ViewSolver.solve(seen(truth, 0.06, 0, i), WIDTH, HEIGHT, ANY);
            double off = Math.log(found.view().camera().focalPx() / 2271.5);
            squares += off * off / views;
            claimed += found.focalRelativeSigma() / views;
        }
        assertThat(claimed / Math.sqrt(squares)).isBetween(0.6, 1.6);
    }

    /** Seen from straight above, size and distance cannot be told apart: only the prior speaks, and says so. */
    @Test
    void leavesTheFocalLengthToThePriorWhereTheViewSaysNothing() {
        CameraView truth = view(2271.5, 0.0, 0.0, 0);
        LensPrior exif = LensPrior.ofFocal(2300, 0.03);
        ViewSolver.Solution found = ViewSolver.solve(seen(truth, 0.05, 0), WIDTH, HEIGHT, exif);
        assertThat(found.view().camera().focalPx()).isCloseTo(2300, within(0.03 * 2300));
        assertThat(found.focalRelativeSigma()).isBetween(0.015, 0.031);
    }

    private static CameraView view(double focalPx, double k1, double k2, double tiltDeg) {
        return new CameraView(
                new PinholeCamera(focalPx, (WIDTH - 1) / 2.0, (HEIGHT - 1) / 2.0, k1, k2),
                new Vector3(Math.PI - Math.toRadians(tiltDeg), 0, 0),
                new Vector3(0, 0, 380));
    }

    private static List<ControlPoint> seen(CameraView view, double noisePx, int wrong) {
        return seen(view, noisePx, wrong, 3);
    }

    private static List<ControlPoint> seen(CameraView view, double noisePx, int wrong, long seed) {
        Random random = new Random(seed);
        List<ControlPoint> seen = new ArrayList<>();
        for (int id = 0; id < ReferenceSheet.A4.cornerCount(); id++) {
            if (ReferenceSheet.A4.isCornerPrinted(id)) {
                Point at = ReferenceSheet.A4.corner(id);
                double noise = seen.size() < wrong ? 6 : noisePx;
                Point off = new Point(noise * random.nextGaussian(), noise * random.nextGaussian());
                seen.add(new ControlPoint(
                        at, view.pixel(Plane.GROUND.pointAbove(at)).plus(off)));
            }
        }
        return seen;
    }
}
