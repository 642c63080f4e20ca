package weltwright.app.gui.testing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.knife.TestSilhouettes;
import weltwright.trace.Trace;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;

/** Invented jobs. */
public final class OutlinedJobs {
    public static final Silhouette KNIFE = TestSilhouettes.STRAIGHT_BACK;

    private OutlinedJobs() {}

    public static Job empty() {
        return Job.begin(LocalDate.of(2027, 3, 1));
    }

    /** An empty job whose handle and spine are measured, with the usual thicknesses. */
    public static Job measured() {
        return empty().assumingUsualThicknesses();
    }

    /** A job that has its outline, without a photo behind it. */
    public static Job outlined() {
        return measured()
                .withOrder("A. Customer", "Trial knife", Optional.of(LocalDate.of(2027, 3, 24)), "brown thread")
                .withSilhouette(KNIFE);
    }

    /**
     * A job whose outline came out of a photo that is not there.
     *
     * @param edgeSure how sure that trace is of the edge's side
     */
    public static Job traced(double edgeSure) {
        CameraView fromAbove =
                new CameraView(new PinholeCamera(3000, 2000, 1500, 0, 0), new Vector3(0, 0, 0), new Vector3(0, 0, 400));
        return measured()
                .withTrace(new Trace(
                        KNIFE,
                        fromAbove,
                        new Plane(9.5, new Point(0, 0)),
                        new RigidMotion(0, new Point(0, 0)),
                        new ErrorBudget(0.2, List.of()),
                        new LandmarkUncertainty(0.5, edgeSure),
                        List.of(),
                        List.of()));
    }
}
