package weltwright.app.gui.shell;

import java.util.Optional;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.job.Job;

/**
 * Tells the user what to do next, given the job and the selected stage.
 *
 * @param text one or two sentences
 * @param action of the button beside the text; empty where there is none
 */
record NextStepPrompt(String text, Optional<NextAction> action) {

    /** The actions of the button. */
    enum NextAction {
        OPEN_PHOTO("Open photo…"),
        FIND_OUTLINE("Find the outline"),
        GO_TO_KNIFE("To the knife"),
        GO_TO_SHEATH("To the sheath"),
        GO_TO_PAPER("To the paper"),
        SAVE_PDF("Save as PDF…");

        private final String label;

        NextAction(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    /**
     * @param tracing whether the photo is being traced
     * @param patternError why the pattern could not be made; empty where it could
     */
    static NextStepPrompt of(Job job, WorkflowStage stage, boolean tracing, String patternError) {
        if (tracing) {
            return new NextStepPrompt("Finding the outline of the knife. This takes some seconds.", Optional.empty());
        }
        if (job.silhouette().isEmpty()) {
            return job.photo().isEmpty()
                    ? prompt(
                            "Begin with a photo: print the sheet, lay the knife on it, photograph it from straight"
                                    + " above, and drop the photo here.",
                            NextAction.OPEN_PHOTO)
                    : prompt(
                            "Measure handle and spine with a caliper and type both under Knife. Then have the outline"
                                    + " found.",
                            stage == WorkflowStage.KNIFE ? NextAction.FIND_OUTLINE : NextAction.GO_TO_KNIFE);
        }
        if (!patternError.isEmpty() && (stage == WorkflowStage.SHEATH || stage == WorkflowStage.PAPER)) {
            return new NextStepPrompt(
                    patternError,
                    stage == WorkflowStage.PAPER ? Optional.of(NextAction.GO_TO_SHEATH) : Optional.empty());
        }
        return switch (stage) {
            case ORDER ->
                prompt("Fill in whose knife it is, and when the sheath is to be ready.", NextAction.GO_TO_KNIFE);
            case KNIFE ->
                prompt(
                        (job.asksForEdge() ? "Look which side is the edge: the outline does not tell for sure. " : "")
                                + describeWeakPlaces(job.unsure().size())
                                + "Look along the whole outline; where it left the knife, redraw it. Pull the marks"
                                + " where they belong. Red must run along the edge.",
                        NextAction.GO_TO_SHEATH);
            case SHEATH ->
                prompt(
                        "Choose the sheath: the pattern is drawn anew with each choice. Read the advice beneath it,"
                                + " and see the knife come out in the test draw.",
                        NextAction.GO_TO_PAPER);
            case PAPER ->
                prompt(
                        "Print, and measure the 50 mm square before you cut. If it is not 50 mm, type what it measures"
                                + " and print again.",
                        NextAction.SAVE_PDF);
        };
    }

    private static String describeWeakPlaces(int left) {
        return switch (left) {
            case 0 -> "";
            case 1 -> "At one place the photo's edge was weak: look there first. ";
            default -> "At " + left + " places the photo's edge was weak: look there first. ";
        };
    }

    private static NextStepPrompt prompt(String text, NextAction action) {
        return new NextStepPrompt(text, Optional.of(action));
    }
}
