package weltwright.trace;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.Photo;
import weltwright.trace.ground.GroundChoice;

/**
 * What came of tracing one picture of a known knife.
 *
 * @param found what was measured, where it was traced
 * @param refusal what is wrong, as the user is told, where it was not
 */
record TraceOutcome(Optional<Found> found, String refusal) {
    /** The blade's width is taken beyond this from the heel, where a plunge or a guard ends. */
    private static final double PAST_HEEL_MM = 4;

    private static final double STEP_MM = 0.25;

    /** What came of the photos as they are, by their file. */
    private static final Map<Path, TraceOutcome> AS_THEY_ARE = new ConcurrentHashMap<>();

    /**
     * A trace beside the truth, lengths in mm.
     *
     * @param trace what was measured
     * @param overallMm error of the overall length
     * @param bladeLengthMm error of the blade's length, heel to tip along the knife
     * @param bladeWidthMm error of the blade's greatest width
     * @param spineRight whether the spine is taken to be where it is; always so for a double-edged blade
     * @param bladeLength95Mm what is claimed for the blade's length
     * @param asksForEdge whether the trace says that it is not sure which side is the edge
     * @param markedMm length of the stretches marked as unsure
     */
    record Found(
            Trace trace,
            OutlineDistance.Reading reading,
            double overallMm,
            double bladeLengthMm,
            double bladeWidthMm,
            double claimedMm,
            boolean spineRight,
            double bladeLength95Mm,
            boolean asksForEdge,
            double markedMm) {

        /** Whether a wrong side of the edge is passed off as right. */
        boolean edgeWrong() {
            return !spineRight && !asksForEdge;
        }

        /** The share of the sampled errors that lie within what is claimed. */
        double covered() {
            return Arrays.stream(reading.distancesMm())
                            .filter(d -> d <= claimedMm)
                            .count()
                    / (double) reading.distancesMm().length;
        }
    }

    /** A photo as it is, on its own ground; traced once for all tests of a run, as a trace is always the same. */
    static TraceOutcome of(GroundTruthPhoto known) {
        return AS_THEY_ARE.computeIfAbsent(known.picture(), file -> of(known, Photo.read(file), known.ground()));
    }

    /** @param picture the photo itself, or another version of it */
    static TraceOutcome of(GroundTruthPhoto known, Photo picture, GroundChoice ground) {
        try {
            return new TraceOutcome(Optional.of(found(known, known.trace(picture, ground))), "");
        } catch (UserFacingException trouble) {
            return new TraceOutcome(Optional.empty(), firstSentence(trouble.getMessage()));
        }
    }

    private static String firstSentence(String message) {
        int end = message.indexOf(". ");
        return end < 0 ? message : message.substring(0, end + 1);
    }

    private static Found found(GroundTruthPhoto known, Trace trace) {
        OutlineDistance.Reading reading = known.measure(trace);
        Polyline truth = known.outline();
        Polyline traced = trace.silhouette().outline().sampled(STEP_MM);
        Polyline placed = traced.map(reading.fit()::apply);
        boolean truthSpineOnLeft = !known.truth().path("mirrored_in_photo").asBoolean(false);
        return new Found(
                trace,
                reading,
                trace.silhouette().overallLengthMm() - known.number("overall_length"),
                trace.silhouette().bladeLengthMm() - known.number("blade_length"),
                bladeWidth(placed) - bladeWidth(truth.resampled(STEP_MM)),
                trace.error().error95Mm(),
                trace.silhouette().spineOnLeft() == truthSpineOnLeft
                        || known.truth().path("double_edged").asBoolean(false),
                trace.landmarkError().bladeLength95Mm(),
                trace.landmarkError().asksForEdge(),
                trace.unsure().stream()
                        .mapToDouble(u -> u.along(traced).lengthMm())
                        .sum());
    }

    /** From the lowest to the highest point of the blade, in the truth's frame. */
    private static double bladeWidth(Polyline outline) {
        var ys = outline.points().stream()
                .filter(p -> p.x() > PAST_HEEL_MM)
                .mapToDouble(Point::y)
                .summaryStatistics();
        return ys.getMax() - ys.getMin();
    }
}
