package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import weltwright.knife.Silhouette;
import weltwright.measure.PrintScale;
import weltwright.trace.Progress;
import weltwright.trace.Trace;
import weltwright.trace.TraceSettings;
import weltwright.trouble.Trouble;

class JobTest {
    private static final Job EMPTY = Job.begin(LocalDate.of(2024, 5, 6));
    private static final TraceSettings OTHER = new TraceSettings(22, 4.2, 0, OptionalDouble.empty(), PrintScale.TRUE);

    @Test
    void anOutlineDoesNotOutliveThePhotoAndTheMeasuresThatItCameFrom() {
        Job full = Jobs.full();
        assertThat(full.withPhoto(Jobs.photo()).trace()).isEmpty();
        assertThat(full.withPhoto(Jobs.photo()).silhouette()).isEmpty();
        assertThat(full.withSettings(OTHER).trace()).isEmpty();
        assertThat(full.withSettings(OTHER).silhouette()).isEmpty();
        assertThat(full.withSettings(full.settings())).isEqualTo(full);
    }

    @Test
    void knowsWhetherAHandCorrectedTheOutline() {
        Job traced = EMPTY.withTrace(Jobs.full().trace().orElseThrow());
        assertThat(EMPTY.isCorrected()).isFalse();
        assertThat(traced.isCorrected()).isFalse();
        Silhouette otherSide = new Silhouette(
                Jobs.silhouette().outline(),
                Jobs.silhouette().landmarks(),
                !Jobs.silhouette().spineOnLeft());
        assertThat(traced.withSilhouette(otherSide).isCorrected()).isTrue();
        assertThat(EMPTY.withSilhouette(otherSide).isCorrected()).isTrue();
    }

    /** The invented trace proposes the spine on the left and says itself that it is not sure. */
    @Test
    void asksWhichSideIsTheEdgeUntilSomebodySaysItAndKeepsThatForTheSamePhoto() {
        Trace trace = Jobs.full().trace().orElseThrow();
        Job traced = EMPTY.withTrace(trace);
        assertThat(EMPTY.asksForEdge()).isFalse();
        assertThat(traced.asksForEdge()).isTrue();
        for (boolean left : new boolean[] {true, false}) {
            Job told = traced.withSpine(left);
            assertThat(told.asksForEdge()).isFalse();
            assertThat(told.silhouette())
                    .contains(left ? trace.silhouette() : trace.silhouette().withOtherSide());
            Job again = told.withSettings(OTHER).withTrace(trace);
            assertThat(again.silhouette()).isEqualTo(told.silhouette());
            assertThat(again.asksForEdge()).isFalse();
            assertThat(told.withPhoto(Jobs.photo()).withTrace(trace).asksForEdge())
                    .isTrue();
        }
    }

    @Test
    void aJobWithAnOutlineIsNotTracedAgain() {
        assertThat(Jobs.full().traced(Progress.NONE)).isEqualTo(Jobs.full());
    }

    @Test
    void saysWhatIsMissingForAPattern() {
        assertThatThrownBy(() -> EMPTY.traced(Progress.NONE))
                .isInstanceOf(Trouble.class)
                .hasMessageContaining("photo");
        assertThatThrownBy(EMPTY::pattern).isInstanceOf(Trouble.class).hasMessageContaining("outline");
    }

    /** What a new job begins with can be typed and saved. */
    @Test
    void beginsWithinTheBoundsOfItsOwnFields() {
        assertThat(JobDocument.of(EMPTY).job(EMPTY.photo())).isEqualTo(EMPTY);
    }
}
