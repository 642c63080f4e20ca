package weltwright.trace.report;

import weltwright.trace.quality.ErrorEstimator;

/** What makes an outline uncertain: one share of an {@link ErrorBudget}. It is worded where it is shown. */
public sealed interface ErrorSource {

    /** The sources that {@link ErrorEstimator} accounts for. */
    enum Known implements ErrorSource {
        /** The noise of the ground's reference points in the picture, and with it the camera's pose. */
        REFERENCE_POINTS,
        FOCAL_LENGTH,
        HANDLE_THICKNESS,
        /** What the ground really measures. */
        GROUND_SCALE,
        /** How much of the knife's thickness shows beside its outline, seen from aside. */
        THICKNESS_AT_RIM,
        /** How closely an edge can be placed in the picture. */
        EDGE_LOCALIZATION,
        /** A shadow that blank ground does not tell from the knife. */
        SHADOW,
        /** Stretches in which the edge hardly shows. */
        WEAK_EDGE,
        /** Lines beside the edge that may be the edge. */
        PARALLEL_LINES,
        FILE_DAMAGE
    }

    /**
     * A source that a job file of an earlier version names in words that are not known any more.
     *
     * @param cause to stand in "Most of that comes from ..."
     * @param remedy one sentence; what to do to make it smaller
     */
    record FreeText(String cause, String remedy) implements ErrorSource {}
}
