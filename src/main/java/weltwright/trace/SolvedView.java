package weltwright.trace;

import java.util.Optional;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;

/**
 * Camera and pose over the ground of a photo.
 *
 * @param solution with how sure they are
 * @param lensSource where the focal length comes from
 * @param contradiction why what was told of the lens was left out, where the ground shows another
 */
record SolvedView(ViewSolver.Solution solution, LensSource lensSource, Optional<PhotoAdvice> contradiction) {
    View view() {
        return solution.view();
    }
}
