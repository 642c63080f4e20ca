package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.distance.DiscreteFrechetDistance;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;

/** The ruler of all accuracy tests against JTS's own distances between curves, which know nothing of it. */
class OutlineDistanceTest {
    private static final double STEP_MM = 0.5;

    /** Between samples that are so far apart a distance may be greater than at any of them by far less than this. */
    private static final double SAMPLED_MM = 0.01;

    private static final RigidMotion MOVED = new RigidMotion(0.7, new Point(31, -12));

    /** A dent of known depth in the edge of a true outline, which is then moved and turned. */
    private static Polyline dented(Polyline truth, double depthMm) {
        return truth.map(p -> {
            double along = (p.x() - 50) / 8;
            double inward = p.y() > 0 ? -1 : 1;
            return p.plus(new Point(0, inward * depthMm * Math.exp(-along * along)));
        });
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.8, 2})
    void greatestIsTheHausdorffDistanceAfterTheFit(double depthMm) throws IOException {
        Polyline truth = GroundTruthPhoto.read(GroundTruthPhoto.SCENES, "clip-sheet-a4")
                .outline()
                .resampled(STEP_MM);
        Polyline traced = dented(truth, depthMm).map(MOVED::apply);
        OutlineDistance.Reading reading = OutlineDistance.measure(traced, truth);
        Polyline placed = traced.map(reading.fit()::apply);
        double hausdorff = DiscreteHausdorffDistance.distance(placed.lineString(), truth.lineString(), 0.5);
        assertThat(reading.greatestMm()).isCloseTo(hausdorff, within(SAMPLED_MM + 0.05 * depthMm));
        // A walk along both outlines at once cannot keep closer than the farthest point is; where the one follows the
        // other it need not part any farther, but for the step from sample to sample.
        double frechet = DiscreteFrechetDistance.distance(placed.lineString(), truth.lineString());
        assertThat(frechet).isBetween(reading.greatestMm() - SAMPLED_MM, reading.greatestMm() + STEP_MM);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1.3, 3, -2})
    void findsNothingWrongWithTheTruthItselfHoweverItLies(double turnRad) throws IOException {
        Polyline truth = GroundTruthPhoto.read(GroundTruthPhoto.SCENES, "clip-sheet-a4")
                .outline()
                .resampled(STEP_MM);
        RigidMotion lies = new RigidMotion(turnRad, new Point(-80, 45));
        assertThat(OutlineDistance.measure(truth.map(lies::apply), truth).greatestMm())
                .isLessThan(SAMPLED_MM);
    }
}
