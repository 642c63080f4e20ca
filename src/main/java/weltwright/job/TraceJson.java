package weltwright.job;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.RigidMotion;
import weltwright.trace.Trace;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.TraceNote;

/** The result of a trace before corrections in a {@link JobDocument}, under the rules that are stated there. */
@JsonNaming(SnakeCaseStrategy.class)
record TraceJson(
        SilhouetteJson outline,
        Lens lens,
        Triple rotation,
        Triple translation,
        double midPlaneHeight,
        PairJson midPlaneSlope,
        double onSheetAngle,
        PairJson onSheetShift,
        double error95,
        List<ErrorTermJson> errorParts,
        double bladeLength95,
        double edgeSure,
        List<UncertainStretchJson> unsure,
        List<TraceNote> notes) {

    static TraceJson of(Trace trace) {
        CameraView view = trace.view();
        return new TraceJson(
                SilhouetteJson.of(trace.silhouette()),
                Lens.of(view.camera()),
                Triple.of(view.rodrigues()),
                Triple.of(view.translation()),
                trace.midPlane().heightMm(),
                PairJson.of(trace.midPlane().slope()),
                trace.onGround().angleRad(),
                PairJson.of(trace.onGround().shift()),
                trace.error().error95Mm(),
                trace.error().parts().stream().map(ErrorTermJson::of).toList(),
                trace.landmarkError().bladeLength95Mm(),
                trace.landmarkError().edgeSure(),
                trace.unsure().stream().map(UncertainStretchJson::of).toList(),
                trace.notes());
    }

    Trace trace() {
        return new Trace(
                outline.silhouette(),
                new CameraView(lens.camera(), rotation.vector(), translation.vector()),
                new Plane(midPlaneHeight, midPlaneSlope.point()),
                new RigidMotion(onSheetAngle, onSheetShift.point()),
                new ErrorBudget(
                        error95, errorParts.stream().map(ErrorTermJson::part).toList()),
                new LandmarkUncertainty(bladeLength95, edgeSure),
                unsure.stream().map(UncertainStretchJson::unsure).toList(),
                List.copyOf(notes));
    }

    /** A pinhole camera: focal length and principal point in pixels, two coefficients of radial distortion. */
    @JsonNaming(SnakeCaseStrategy.class)
    record Lens(double focalPx, PairJson centrePx, double k1, double k2) {

        static Lens of(PinholeCamera camera) {
            return new Lens(
                    camera.focalPx(), new PairJson(camera.centreXPx(), camera.centreYPx()), camera.k1(), camera.k2());
        }

        PinholeCamera camera() {
            return new PinholeCamera(focalPx, centrePx.x(), centrePx.y(), k1, k2);
        }
    }

    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    @JsonPropertyOrder({"x", "y", "z"})
    record Triple(double x, double y, double z) {

        static Triple of(Vector3 vector) {
            return new Triple(vector.x(), vector.y(), vector.z());
        }

        Vector3 vector() {
            return new Vector3(x, y, z);
        }
    }
}
