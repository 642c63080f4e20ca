package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.knife.MovableLandmark;
import weltwright.knife.Silhouette;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.PrintScale;

class JobTest {
    private static final Job EMPTY = Job.begin(LocalDate.of(2024, 5, 6)).assumingUsualThicknesses();
    private static final TraceSettings OTHER = new TraceSettings(22, 4.2, 0, OptionalDouble.empty(), PrintScale.TRUE);

    @Test
    void anOutlineDoesNotOutliveThePhotoAndTheMeasuresThatItCameFrom() {
        Job full = TestJobs.full();
        assertThat(full.withPhoto(TestJobs.photo()).trace()).isEmpty();
        assertThat(full.withPhoto(TestJobs.photo()).silhouette()).isEmpty();
        assertThat(full.withSettings(OTHER).trace()).isEmpty();
        assertThat(full.withSettings(OTHER).silhouette()).isEmpty();
        assertThat(full.withSettings(full.settings())).isEqualTo(full);
        Job drawn = EMPTY.withSilhouette(TestJobs.silhouette());
        assertThat(drawn.withSettings(OTHER).silhouette())
                .as("there is no photo to find it in again")
                .isEqualTo(drawn.silhouette());
    }

    @Test
    void knowsWhetherAHandCorrectedTheOutline() {
        Job traced = EMPTY.withTrace(TestJobs.full().trace().orElseThrow());
        assertThat(EMPTY.isCorrected()).isFalse();
        assertThat(traced.isCorrected()).isFalse();
        Silhouette otherSide = new Silhouette(
                TestJobs.silhouette().outline(),
                TestJobs.silhouette().landmarks(),
                !TestJobs.silhouette().spineOnLeft());
        assertThat(traced.withSilhouette(otherSide).isCorrected()).isTrue();
        assertThat(EMPTY.withSilhouette(otherSide).isCorrected()).isTrue();
    }

    /** The invented trace proposes the spine on the left and says itself that it is not sure. */
    @Test
    void asksWhichSideIsTheEdgeUntilSomebodySaysItAndKeepsThatForTheSamePhoto() {
        Trace trace = TestJobs.full().trace().orElseThrow();
        Job traced = EMPTY.withTrace(trace);
        assertThat(EMPTY.asksForEdge()).isFalse();
        assertThat(traced.asksForEdge()).isTrue();
        for (boolean left : new boolean[] {true, false}) {
            Job told = traced.withSpine(left);
            assertThat(told.asksForEdge()).isFalse();
            assertThat(told.silhouette())
                    .contains(trace.withSpineOnLeft(left, told.settings().assumingUsual())
                            .silhouette());
            assertThat(told.silhouette().orElseThrow().spineOnLeft()).isEqualTo(left);
            Job again = told.withSettings(OTHER).withTrace(trace);
            assertThat(again.silhouette().orElseThrow().spineOnLeft()).isEqualTo(left);
            assertThat(again.asksForEdge()).isFalse();
            assertThat(told.withPhoto(TestJobs.photo()).withTrace(trace).asksForEdge())
                    .isTrue();
        }
    }

    /** The blade moves as the trace is told the side; what was pulled stays where the user pulled it. */
    @Test
    void keepsCorrectionsWhenTheSideOfTheSpineIsTold() {
        Job traced = EMPTY.withTrace(TestJobs.full().trace().orElseThrow());
        Job pulled = traced.withSilhouette(
                MovableLandmark.BUTT.pulled(traced.silhouette().orElseThrow(), new Point(-108, 4)));
        Point butt = pulled.silhouette().orElseThrow().landmarks().butt();
        for (boolean left : new boolean[] {true, false}) {
            Job told = pulled.withSpine(left);
            Silhouette kept = told.silhouette().orElseThrow();
            assertThat(kept.outline()).isEqualTo(told.proposal().orElseThrow().outline());
            assertThat(kept.landmarks().butt().distance(butt)).isLessThan(0.1);
            assertThat(kept.landmarks().butt())
                    .isNotEqualTo(told.proposal().orElseThrow().landmarks().butt());
            assertThat(told.unsure()).isEqualTo(traced.unsure());
        }
        assertThat(pulled.withSpine(true).withSpine(false).silhouette())
                .isEqualTo(pulled.withSpine(false).silhouette());
    }

    @Test
    void aJobWithAnOutlineIsNotTracedAgain() {
        assertThat(TestJobs.full().traced(ProgressListener.NONE)).isEqualTo(TestJobs.full());
    }

    @Test
    void saysWhatIsMissingForAPattern() {
        assertThatThrownBy(() -> EMPTY.traced(ProgressListener.NONE))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("photo");
        assertThatThrownBy(EMPTY::pattern)
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("outline");
    }

    /** What a new job begins with can be typed and saved. */
    @Test
    void beginsWithinTheBoundsOfItsOwnFields() {
        assertThat(JobDocument.of(EMPTY).job(EMPTY.photo())).isEqualTo(EMPTY);
    }
}
