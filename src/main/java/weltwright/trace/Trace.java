package weltwright.trace;

import java.util.List;
import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.TraceNote;

/**
 * What a photo says of a knife.
 *
 * @param silhouette the outline and proposed landmarks
 * @param seenFrom camera and pose over the sheet
 * @param midPlane the plane in which the outline lies
 * @param onSheet where the silhouette's frame lies in the sheet's frame
 * @param error how far to trust it
 * @param landmarkError how far to trust the proposed landmarks
 * @param unsure where the picture showed little of an edge, counter-clockwise round the outline
 * @param notes what was used and how sure it is: ground, focal length, camera, and what makes the trace worse
 */
public record Trace(
        Silhouette silhouette,
        CameraView seenFrom,
        Plane midPlane,
        RigidMotion onSheet,
        ErrorBudget error,
        LandmarkUncertainty landmarkError,
        List<UncertainStretch> unsure,
        List<TraceNote> notes) {

    /** The same with edge and spine exchanged, by somebody who saw the knife. */
    public Trace withOtherSide() {
        return new Trace(
                silhouette.withOtherSide(),
                seenFrom,
                midPlane,
                onSheet,
                error,
                landmarkError.withEdgeTold(),
                unsure,
                notes);
    }

    /** The same with another guard, or with none. */
    public Trace withGuard(Optional<Guard> guard) {
        return new Trace(silhouette.withGuard(guard), seenFrom, midPlane, onSheet, error, landmarkError, unsure, notes);
    }

    /** Where a pixel's line of sight meets the mid-plane, in the silhouette's frame, in mm. */
    public Point under(Point pixel) {
        return onSheet.inverse().apply(seenFrom.intersection(pixel, midPlane));
    }
}
