package weltwright.trace;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.outline.OutlineParallaxCorrection;
import weltwright.trace.outline.ThicknessParallax;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.TraceNote;

/**
 * The result of tracing a knife in a photo.
 *
 * @param silhouette the outline and proposed landmarks
 * @param view camera and pose over the ground
 * @param midPlane the plane of the outline, in the ground frame
 * @param onGround the motion from the silhouette's frame to the ground frame
 * @param error of the outline
 * @param landmarkError uncertainty of the proposed landmarks
 * @param unsure stretches of weak edge, counter-clockwise around the outline
 * @param notes on ground, focal length and camera with their uncertainty, and advice on the photo
 */
@RecordBuilder
public record Trace(
        Silhouette silhouette,
        CameraView view,
        Plane midPlane,
        RigidMotion onGround,
        ErrorBudget error,
        LandmarkUncertainty landmarkError,
        List<UncertainStretch> unsure,
        List<TraceNote> notes) {
    /** Step of outlines whose displacement is computed; chosen by eye. */
    private static final double ALONG_STEP_MM = 0.5;

    /**
     * Returns the trace with the spine on the side that the user told. As far as that was in doubt, the trace took the
     * mean of both cases off for the blade's thickness; the blade is moved by the difference.
     *
     * @param settings with which it was traced
     */
    public Trace withSpineOnLeft(boolean onLeft, TraceSettings settings) {
        Silhouette sided = silhouette.spineOnLeft() == onLeft ? silhouette : silhouette.withOtherSide();
        return TraceBuilder.builder(this)
                .silhouette(parallax(silhouette, settings).withSpineTold(sided))
                .landmarkError(landmarkError.withEdgeConfirmed())
                .build();
    }

    /** Returns the displacement by the knife's thickness of a silhouette in this trace's frame. */
    OutlineParallaxCorrection parallax(Silhouette knife, TraceSettings settings) {
        Polyline along = knife.outline().sampled(ALONG_STEP_MM);
        return new OutlineParallaxCorrection(
                Tracer.thickness(settings),
                view,
                midPlane,
                onGround,
                along,
                knife.landmarks().heel().x(),
                knife.landmarks().tip().x(),
                along.points().stream().mapToDouble(Point::x).min().orElseThrow(),
                knife.spineOnLeft() ? landmarkError.edgeSure() : 1 - landmarkError.edgeSure(),
                ThicknessParallax.FRONT_PART);
    }

    /** Returns the trace with another guard, or with none. */
    public Trace withGuard(Optional<Guard> guard) {
        return TraceBuilder.builder(this)
                .silhouette(silhouette.withGuard(guard))
                .build();
    }

    /** Returns where the line of sight of a pixel meets the mid-plane, in the silhouette's frame, in mm. */
    public Point onMidPlane(Point pixel) {
        return onGround.inverse().apply(view.intersection(pixel, midPlane));
    }
}
