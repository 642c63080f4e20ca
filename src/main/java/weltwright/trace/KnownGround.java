package weltwright.trace;

import java.util.List;
import weltwright.geometry.Polyline;
import weltwright.ground.Picture;
import weltwright.ground.Reference;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;

/** A ground that was found in a picture: what the view is solved from, and what lies on it. */
interface KnownGround {
    List<Reference> references();

    /** How far the ground's proportions may be off: standard deviation of the ratio of its scales along x and y, over 1. */
    double stretchSigma();

    /** How far its size may be off: standard deviation, as a part of it. */
    double scaleSigma();

    /** One plain sentence on what was found and how well it fits. */
    String note(ViewSolver.Solution solution);

    /** What lies on it. */
    Cover cover(Picture picture, View view);

    /**
     * @param contour of what hides the ground, on the ground's plane, closed and counter-clockwise, in mm
     * @param pattern what the bare ground would show; its masks are closed
     * @param roughMm over what length the contour may stray: so far it is smoothed
     * @param look what the ground's print says of what is hidden
     */
    record Cover(Polyline contour, double roughMm, GroundPattern pattern, PrintLook look) {}
}
