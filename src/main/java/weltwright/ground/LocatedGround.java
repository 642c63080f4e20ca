package weltwright.ground;

import java.util.List;
import weltwright.camera.ControlPoint;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.image.DecodedPhoto;

/**
 * A ground found in a picture: the control points to solve the view from, and their errors.
 *
 * @param references the control points
 * @param pixelSigma least standard deviation of a coordinate of a control point, in pixels, however well they fit
 * @param stretchSigma standard deviation of the ratio of the ground's scales along x and y
 * @param scaleSigma standard deviation of the ground's size, relative
 * @param observation the visible part, for judging the photo
 * @param groundLines the ground's lines, to be drawn over the photo
 */
public record LocatedGround(
        List<ControlPoint> references,
        double pixelSigma,
        double stretchSigma,
        double scaleSigma,
        GroundObservation observation,
        GroundLines groundLines) {

    /** Solves for camera and pose. */
    public ViewSolver.Solution solve(DecodedPhoto picture, LensPrior lens) {
        return ViewSolver.solve(references, picture.widthPx(), picture.heightPx(), lens, stretchSigma, pixelSigma);
    }
}
