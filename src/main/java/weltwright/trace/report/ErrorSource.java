package weltwright.trace.report;

/** A source of error in an {@link ErrorBudget}, as data; its sentences are made where it is shown. */
public sealed interface ErrorSource {

    /** The sources that {@code trace.quality.ErrorEstimator} accounts for. */
    enum Known implements ErrorSource {
        /** Noise of the ground's control points in the photo, by which the camera's pose errs. */
        REFERENCE_POINTS,
        FOCAL_LENGTH,
        HANDLE_THICKNESS,
        /** True size of the ground. */
        GROUND_SCALE,
        /** Displacement of the silhouette by the knife's thickness in an oblique view. */
        THICKNESS_AT_RIM,
        /** Noise and blur of the edge in the photo. */
        EDGE_LOCALIZATION,
        /** A shadow that may be mistaken for the knife on blank ground. */
        SHADOW,
        /** Stretches of outline along which the edge is weak. */
        WEAK_EDGE,
        /** Lines beside the edge that may be the edge instead; only in job files of earlier versions. */
        PARALLEL_LINES,
        FILE_DAMAGE
    }

    /**
     * A source from a job file of an earlier version in words that are no longer known.
     *
     * @param cause completes "Most of that comes from ..."
     * @param remedy a sentence on how to reduce the error
     */
    record FreeText(String cause, String remedy) implements ErrorSource {}
}
