package weltwright.window;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.ground.Camera;
import weltwright.ground.Plane;
import weltwright.ground.Vector3;
import weltwright.ground.View;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.knife.TestSilhouettes;
import weltwright.trace.ErrorBudget;
import weltwright.trace.LandmarkError;
import weltwright.trace.Trace;

/** Invented jobs. */
final class Samples {
    static final Silhouette KNIFE = TestSilhouettes.STRAIGHT_BACK;

    private Samples() {}

    static Job empty() {
        return Job.begin(LocalDate.of(2027, 3, 1));
    }

    /** A job that has its outline, without a photo behind it. */
    static Job outlined() {
        return empty().withOrder("A. Customer", "Trial knife", Optional.of(LocalDate.of(2027, 3, 24)), "brown thread")
                .withSilhouette(KNIFE);
    }

    /**
     * A job whose outline came out of a photo that is not there.
     *
     * @param edgeSure how sure that trace is of the edge's side
     */
    static Job traced(double edgeSure) {
        View fromAbove = new View(new Camera(3000, 2000, 1500, 0, 0), new Vector3(0, 0, 0), new Vector3(0, 0, 400));
        return empty().withTrace(new Trace(
                KNIFE,
                fromAbove,
                new Plane(9.5, new Point(0, 0)),
                new Placement(0, new Point(0, 0)),
                new ErrorBudget(0.2, List.of()),
                new LandmarkError(0.5, edgeSure),
                List.of(),
                List.of()));
    }
}
