package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.leather.LayoutProgress;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.job.Job;

/** How far a stage is. */
class StageProgressTest {

    @Test
    void theBenchIsBeingWorkedAtOnceAStepIsTickedOff() {
        Job job = OutlinedJobs.outlined();
        assertThat(bench(job).state()).isEqualTo(StageState.OPEN);
        Job begun = job.withWorkDone("prepare/cut/body", Optional.of(LocalDateTime.of(2027, 3, 2, 10, 0)));
        assertThat(bench(begun).state()).isEqualTo(StageState.WORKING);
        assertThat(bench(OutlinedJobs.empty()).reason()).contains("Waits for the outline");
        assertThat(bench(job.withFinished(Optional.of(LocalDate.of(2027, 3, 5))))
                        .state())
                .isEqualTo(StageState.DONE);
    }

    @Test
    void thePaperIsDoneWithTheFirstPrintAndWhereLeatherWasCut() {
        Job job = OutlinedJobs.outlined();
        assertThat(of(job, WorkflowStage.PAPER, false).state()).isEqualTo(StageState.OPEN);
        assertThat(of(job, WorkflowStage.PAPER, true).state()).isEqualTo(StageState.DONE);
        Job begun = job.withWorkDone("prepare/cut/body", Optional.of(LocalDateTime.of(2027, 3, 2, 10, 0)));
        assertThat(of(begun, WorkflowStage.PAPER, false).state()).isEqualTo(StageState.DONE);
    }

    @Test
    void theLeatherIsAsFarAsItsLayout() {
        assertThat(leather(LayoutProgress.State.NOT_BEGUN).state()).isEqualTo(StageState.OPEN);
        assertThat(leather(LayoutProgress.State.SEARCHING).state()).isEqualTo(StageState.WORKING);
        assertThat(leather(LayoutProgress.State.LAID_OUT).state()).isEqualTo(StageState.DONE);
        assertThat(leather(LayoutProgress.State.NO_ROOM))
                .isEqualTo(new StageProgress(StageState.DOUBTFUL, "the reason"));
    }

    private static StageProgress leather(LayoutProgress.State state) {
        return StageProgress.of(
                OutlinedJobs.outlined(),
                WorkflowStage.LEATHER,
                NextStepPrompt.Circumstances.NONE,
                new StageProgress.Results(
                        false,
                        new LayoutProgress(state, state == LayoutProgress.State.NO_ROOM ? "the reason" : ""),
                        false));
    }

    private static StageProgress bench(Job job) {
        return of(job, WorkflowStage.BENCH, false);
    }

    private static StageProgress of(Job job, WorkflowStage stage, boolean onPaper) {
        return StageProgress.of(
                job,
                stage,
                NextStepPrompt.Circumstances.NONE,
                new StageProgress.Results(false, LayoutProgress.NONE, onPaper));
    }
}
