package weltwright.ground;

import java.util.List;
import weltwright.camera.ControlPoint;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.image.DecodedPhoto;

/**
 * A ground that was found in a picture: points to solve the view from, how exact they are, and what it shows of itself.
 *
 * @param references its points, with their places on the ground and in the picture
 * @param pixelSigma the least noise that a coordinate of a reference has, however well they fit: standard deviation, in
 *     pixels
 * @param stretchSigma how far the ground's proportions may be off: standard deviation of the ratio of its scales along
 *     x and y, over 1
 * @param scaleSigma how far its size may be off: standard deviation, as a part of it
 * @param facts what it shows of itself, for judging the photo
 * @param sketch its lines, to be drawn over the photo
 */
public record LocatedGround(
        List<ControlPoint> references,
        double pixelSigma,
        double stretchSigma,
        double scaleSigma,
        GroundObservation facts,
        GroundLines sketch) {

    /** Camera and pose over it. */
    public ViewSolver.Solution solve(DecodedPhoto picture, LensPrior lens) {
        return ViewSolver.solve(references, picture.widthPx(), picture.heightPx(), lens, stretchSigma, pixelSigma);
    }
}
