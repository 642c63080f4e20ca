package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.OutlineEdit;

/** The second outline is the first one, 1 % larger: as a knife comes out that is held for less thick. */
class ManualCorrectionTest {
    private static final Silhouette KNIFE = TestSilhouettes.STRAIGHT_BACK;
    private static final Silhouette ANEW = new Silhouette(
            KNIFE.outline().map(p -> p.times(1.01)), KNIFE.landmarks().map(p -> p.times(1.01)), true);

    private static final Guard GUARD =
            KNIFE.withGuardFromTip(100, 108).landmarks().guard().orElseThrow();

    @Test
    void landmarksAreChangedAgain() {
        Silhouette corrected = MovableLandmark.BUTT.pulled(KNIFE, new Point(-105, 30));
        Silhouette again = new ManualCorrection(KNIFE, corrected).on(ANEW);
        assertThat(again.outline()).isEqualTo(ANEW.outline());
        assertThat(again.landmarks().tip()).isEqualTo(ANEW.landmarks().tip());
        assertThat(again.landmarks().heel()).isEqualTo(ANEW.landmarks().heel());
        assertThat(again.landmarks()
                        .butt()
                        .distance(corrected.landmarks().butt().times(1.01)))
                .isLessThan(0.1);
    }

    @Test
    void aStretchThatWasPulledIsPulledAgainAndTheRestIsAsProposed() {
        Silhouette corrected = KNIFE.withOutline(
                OutlineEdit.moved(OutlineEdit.added(KNIFE.outline(), new Point(60, 12)), 2, new Point(60, 9)));
        Silhouette again = new ManualCorrection(KNIFE, corrected).on(ANEW);
        Polyline wanted = corrected.outline().map(p -> p.times(1.01)).sampled(0.2);
        Polyline curve = again.outline().sampled(0.2);
        assertThat(wanted.points())
                .allSatisfy(p ->
                        assertThat(curve.at(curve.stationOf(p)).distance(p)).isLessThan(0.2));
        assertThat(again.outline().nodes())
                .containsAll(ANEW.outline().nodes().stream()
                        .filter(n -> n.at().y() < 0 || n.at().x() < 0)
                        .toList());
        assertThat(again.landmarks().tip().distance(ANEW.landmarks().tip())).isCloseTo(0, within(0.02));
    }

    /** Where the new trace proposes none, and where it proposes one elsewhere. */
    @Test
    void aGuardThatWasAddedIsThereAgain() {
        Silhouette corrected = KNIFE.withGuard(Optional.of(GUARD));
        Silhouette proposed = ANEW.withGuardFromTip(80, 90);
        for (Silhouette anew : List.of(ANEW, proposed)) {
            Guard again = new ManualCorrection(KNIFE, corrected)
                    .on(anew)
                    .landmarks()
                    .guard()
                    .orElseThrow();
            assertThat(again.front().distance(GUARD.front().times(1.01))).isLessThan(0.1);
            assertThat(again.back().distance(GUARD.back().times(1.01))).isLessThan(0.1);
        }
    }

    @Test
    void aGuardThatWasTakenAwayStaysAway() {
        Silhouette proposed = KNIFE.withGuard(Optional.of(GUARD));
        Silhouette again = new ManualCorrection(proposed, KNIFE).on(ANEW.withGuardFromTip(100, 108));
        assertThat(again).isEqualTo(ANEW);
    }

    /** One end pulled, the other as proposed: it stays where the new trace has it. */
    @Test
    void aGuardThatWasMovedIsMovedAgain() {
        Silhouette proposed = KNIFE.withGuard(Optional.of(GUARD));
        Silhouette corrected =
                MovableLandmark.GUARD_BACK.pulled(proposed, GUARD.back().plus(new Point(-5, 0)));
        Guard again = new ManualCorrection(proposed, corrected)
                .on(ANEW.withGuard(Optional.of(GUARD.map(p -> p.times(1.01)))))
                .landmarks()
                .guard()
                .orElseThrow();
        assertThat(again.front()).isEqualTo(GUARD.front().times(1.01));
        assertThat(again.back()
                        .distance(corrected
                                .landmarks()
                                .guard()
                                .orElseThrow()
                                .back()
                                .times(1.01)))
                .isLessThan(0.1);
    }

    @Test
    void whereNothingWasCorrectedNothingIs() {
        assertThat(new ManualCorrection(KNIFE, KNIFE).on(ANEW)).isEqualTo(ANEW);
    }
}
