package weltwright.trace.capture;

import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;

/**
 * Camera and pose over the ground of a photo.
 *
 * @param solution with how sure they are
 * @param lensSource where the focal length comes from
 * @param contradiction why what was told of the lens was left out, where the ground shows another
 */
public record SolvedView(ViewSolver.Solution solution, LensSource lensSource, Optional<PhotoAdvice> contradiction) {
    public CameraView view() {
        return solution.view();
    }
}
