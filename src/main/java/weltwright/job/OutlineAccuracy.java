package weltwright.job;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.Silhouette;
import weltwright.trace.Trace;

/**
 * How far off the outline of a job may be, by all that is known: the error that the trace states, what was drawn by
 * hand since, and what a caliper says.
 *
 * <p>A place that was drawn by hand has the error of the hand instead of the trace's. The variance over the outline is
 * that of both, each by its share of the outline, and the error stands to it as for one normal distribution. A caliper
 * that differs from the outline by more than the error allows contradicts it: half of a width's difference lies on
 * either side, and half of a length's at either end; the error is then at least that.
 *
 * @param error95Mm 95 of 100 places lie within this distance of the true outline
 * @param byHand the part of the outline that was drawn by hand, from 0 to 1
 * @param contradictionMm the greatest difference between a caliper measure and the outline as it was before, where it
 *     contradicts the stated error; 0 where none does
 */
public record OutlineAccuracy(double error95Mm, double byHand, double contradictionMm) {
    /**
     * Error of a line drawn by hand in 95 of 100 places: two pixels of a screen on which a knife of 250 mm is 900
     * pixels long. Chosen by eye.
     */
    static final double HAND95_MM = 2 * 250 / 900.0;

    /** A place that lies farther from the trace was drawn by hand; the same as for what counts as reviewed. */
    private static final double MOVED_MM = 0.1;

    private static final double STEP_MM = 0.5;

    private static final GeometryFactory JTS = new GeometryFactory();

    /** Returns the accuracy of a job's outline; empty for one that was not traced. */
    public static Optional<OutlineAccuracy> of(Job job) {
        return job.trace().flatMap(trace -> job.silhouette().map(now -> of(job, trace, now)));
    }

    private static OutlineAccuracy of(Job job, Trace trace, Silhouette now) {
        double traced95 = trace.error().error95Mm();
        double byHand = job.isCorrected() ? shareMoved(job.proposal().orElseThrow(), now) : 0;
        double error95 = Math.sqrt((1 - byHand) * traced95 * traced95 + byHand * HAND95_MM * HAND95_MM);
        double contradiction = 0;
        for (CaliperMeasure caliper : job.calipers()) {
            double difference = Math.abs(caliper.mm() - caliper.outlineMm());
            double allowed = caliper.fromTipMm().isPresent()
                    ? 2 * traced95
                    : Math.max(2 * traced95, trace.landmarkError().bladeLength95Mm());
            if (difference > allowed) {
                contradiction = Math.max(contradiction, difference);
            }
        }
        return new OutlineAccuracy(Math.max(error95, contradiction / 2), byHand, contradiction);
    }

    private static double shareMoved(Silhouette before, Silhouette now) {
        IndexedFacetDistance traced =
                new IndexedFacetDistance(before.outline().sampled(MOVED_MM).lineString());
        List<Point> points = now.outline().sampled(MOVED_MM).resampled(STEP_MM).points();
        long moved = points.stream()
                .filter(p -> traced.distance(JTS.createPoint(p.coordinate())) > MOVED_MM)
                .count();
        return (double) moved / points.size();
    }
}
