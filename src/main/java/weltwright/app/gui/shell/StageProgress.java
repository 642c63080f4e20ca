package weltwright.app.gui.shell;

import weltwright.app.gui.leather.LayoutProgress;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.job.Job;
import weltwright.message.Messages;

/**
 * How far a stage is, and why.
 *
 * @param state shown as a shape
 * @param reason for the user; empty where the state says enough
 */
record StageProgress(StageState state, String reason) {
    private static final Messages MESSAGES = Messages.of(StageProgress.class);

    /**
     * How far what follows from the sheath is.
     *
     * @param computing whether the pattern is being computed
     * @param layout how far the layout on leather is
     * @param onPaper whether the pattern, as it is now, was printed or saved as PDF
     */
    record Results(boolean computing, LayoutProgress layout, boolean onPaper) {}

    /**
     * Returns the progress of a stage.
     *
     * @param now with the refused entry on which this stage depends
     */
    static StageProgress of(Job job, WorkflowStage stage, NextStepPrompt.Circumstances now, Results results) {
        if (!now.entryError().isEmpty()) {
            return new StageProgress(StageState.STOPPED, now.entryError());
        }
        return stage == WorkflowStage.KNIFE ? ofKnife(job, now) : ofPattern(job, stage, now, results);
    }

    private static StageProgress ofKnife(Job job, NextStepPrompt.Circumstances now) {
        if (now.tracing()) {
            return new StageProgress(StageState.WORKING, "");
        }
        if (job.silhouette().isEmpty()) {
            return now.traceError().isEmpty()
                    ? new StageProgress(StageState.OPEN, job.photo().isEmpty() ? MESSAGES.text("waits.photo") : "")
                    : new StageProgress(StageState.STOPPED, now.traceError());
        }
        if (job.asksForEdge()) {
            return new StageProgress(StageState.DOUBTFUL, MESSAGES.text("look.edge"));
        }
        return job.unsure().isEmpty()
                ? new StageProgress(StageState.DONE, "")
                : new StageProgress(
                        StageState.DOUBTFUL,
                        MESSAGES.text("look.unsure", job.unsure().size()));
    }

    private static StageProgress ofPattern(
            Job job, WorkflowStage stage, NextStepPrompt.Circumstances now, Results results) {
        if (job.silhouette().isEmpty()) {
            return new StageProgress(StageState.OPEN, MESSAGES.text("waits.outline"));
        }
        if (!job.settings().isMeasured()) {
            return new StageProgress(StageState.OPEN, MESSAGES.text("waits.thickness"));
        }
        if (!now.patternError().isEmpty()) {
            return new StageProgress(StageState.STOPPED, now.patternError());
        }
        boolean workBegun = !job.workDone().isEmpty();
        return switch (stage) {
            case KNIFE, SHEATH -> new StageProgress(results.computing() ? StageState.WORKING : StageState.DONE, "");
            case LEATHER -> ofLayout(results.layout());
            case PAPER -> new StageProgress(results.onPaper() || workBegun ? StageState.DONE : StageState.OPEN, "");
            case BENCH ->
                new StageProgress(
                        job.finished().isPresent() ? StageState.DONE : workBegun ? StageState.WORKING : StageState.OPEN,
                        "");
        };
    }

    private static StageProgress ofLayout(LayoutProgress layout) {
        StageState state = switch (layout.state()) {
            case NOT_BEGUN -> StageState.OPEN;
            case SEARCHING -> StageState.WORKING;
            case LAID_OUT -> StageState.DONE;
            case NO_ROOM -> StageState.DOUBTFUL;
        };
        return new StageProgress(state, layout.reason());
    }
}
