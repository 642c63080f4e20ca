package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.OutlinedJobs;

class NextStepPromptTest {
    private static final NextStepPrompt.Circumstances NONE = NextStepPrompt.Circumstances.NONE;

    @ParameterizedTest
    @EnumSource(WorkflowStage.class)
    void beginsAnEmptyJobWithAPhotoAtEachStage(WorkflowStage stage) {
        NextStepPrompt step = NextStepPrompt.of(OutlinedJobs.empty(), stage, NONE);
        assertThat(step.text()).contains("print the sheet", "drop the photo here");
        assertThat(step.action()).contains(NextStepPrompt.NextAction.OPEN_PHOTO);
    }

    @ParameterizedTest
    @EnumSource(WorkflowStage.class)
    void offersNoActionWhileTracing(WorkflowStage stage) {
        assertThat(NextStepPrompt.of(
                                OutlinedJobs.empty(), stage, new NextStepPrompt.Circumstances(true, "", "", false, ""))
                        .action())
                .isEmpty();
    }

    @ParameterizedTest
    @EnumSource(WorkflowStage.class)
    void leadsFromEachStageToTheNext(WorkflowStage stage) {
        Optional<NextStepPrompt.NextAction> expected = switch (stage) {
            case KNIFE -> Optional.of(NextStepPrompt.NextAction.GO_TO_SHEATH);
            case SHEATH -> Optional.of(NextStepPrompt.NextAction.GO_TO_LEATHER);
            case LEATHER -> Optional.of(NextStepPrompt.NextAction.GO_TO_PAPER);
            case PAPER -> Optional.of(NextStepPrompt.NextAction.SAVE_PDF);
            case BENCH -> Optional.empty(); // the last
        };
        assertThat(NextStepPrompt.of(OutlinedJobs.outlined(), stage, NONE).action())
                .isEqualTo(expected);
    }

    @Test
    void asksForTheEdgeSideWhereItIsUncertain() {
        assertThat(NextStepPrompt.of(OutlinedJobs.traced(0.75), WorkflowStage.KNIFE, NONE)
                        .text())
                .startsWith("Look which side is the edge: the outline does not tell for sure. ");
        assertThat(NextStepPrompt.of(OutlinedJobs.traced(0.95), WorkflowStage.KNIFE, NONE)
                        .text())
                .doesNotContain("which side is the edge");
    }

    @ParameterizedTest
    @EnumSource(
            value = WorkflowStage.class,
            names = {"SHEATH", "LEATHER", "PAPER"})
    void explainsWhyThereIsNoPattern(WorkflowStage stage) {
        NextStepPrompt step = NextStepPrompt.of(
                OutlinedJobs.outlined(),
                stage,
                new NextStepPrompt.Circumstances(false, "", "", false, "The welt is too thin. Choose more layers."));
        assertThat(step.text()).isEqualTo("The welt is too thin. Choose more layers.");
        assertThat(step.action()).isNotEqualTo(java.util.Optional.of(NextStepPrompt.NextAction.SAVE_PDF));
        assertThat(step.action()).isNotEqualTo(java.util.Optional.of(NextStepPrompt.NextAction.GO_TO_PAPER));
    }
}
