package weltwright.trace.capture;

import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;

/**
 * The camera and pose over the ground of a photo.
 *
 * @param solution camera and pose with their uncertainty
 * @param lensSource source of the focal length
 * @param contradiction advice why the prior of the lens was left out; empty where it was used
 */
public record SolvedView(ViewSolver.Solution solution, LensSource lensSource, Optional<PhotoAdvice> contradiction) {
    public CameraView view() {
        return solution.view();
    }
}
