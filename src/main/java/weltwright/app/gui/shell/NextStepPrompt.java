package weltwright.app.gui.shell;

import java.util.List;
import java.util.Optional;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.job.Job;

/**
 * Tells the user what to do next, given the job and the selected stage.
 *
 * @param text one or two sentences
 * @param actions of the buttons beside the text, the proposed one first; none where there is nothing to do but wait
 */
record NextStepPrompt(String text, List<NextAction> actions) {

    /** The actions of the buttons. */
    enum NextAction {
        OPEN_PHOTO("Open photo…"),
        FIND_OUTLINE("Find the outline"),
        GO_TO_KNIFE("To the knife"),
        GO_TO_SHEATH("To the sheath"),
        GO_TO_LEATHER("To the leather"),
        GO_TO_PAPER("To the paper"),
        SAVE_PDF("Save as PDF…"),
        TYPE_THICKNESSES("Type them"),
        MEND_ENTRY("Mend the entry"),
        CHOOSE_GROUND("Choose the ground"),
        SET_CORNERS("Set corners"),
        OPEN_ANOTHER_PHOTO("Another photo…");

        private final String label;

        NextAction(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    NextStepPrompt {
        actions = List.copyOf(actions);
    }

    /**
     * What the prompt depends on besides the job.
     *
     * @param tracing whether the photo is being traced
     * @param entryError why an entry was refused on which the stage depends; empty where none was
     * @param traceError why the photo could not be traced; empty where it was not tried
     * @param patternError why the pattern could not be made; empty where it could
     */
    record Circumstances(boolean tracing, String entryError, String traceError, String patternError) {
        static final Circumstances NONE = new Circumstances(false, "", "", "");
    }

    /** Returns the action of the first button; empty where there is none. */
    Optional<NextAction> action() {
        return actions.stream().findFirst();
    }

    static NextStepPrompt of(Job job, WorkflowStage stage, Circumstances now) {
        if (!now.entryError().isEmpty()) {
            return prompt(now.entryError(), NextAction.MEND_ENTRY);
        }
        if (now.tracing()) {
            return new NextStepPrompt("Finding the outline of the knife. This takes some seconds.", List.of());
        }
        boolean empty = job.silhouette().isEmpty() && job.photo().isEmpty();
        if (empty) {
            return prompt(
                    "Begin with a photo: print the sheet, lay the knife on it, photograph it from straight above, and drop"
                            + " the photo here.",
                    NextAction.OPEN_PHOTO);
        }
        if (!job.settings().isMeasured()) {
            return prompt(missing(job), NextAction.TYPE_THICKNESSES);
        }
        if (job.silhouette().isEmpty() && !now.traceError().isEmpty()) {
            return new NextStepPrompt(
                    now.traceError(),
                    List.of(NextAction.CHOOSE_GROUND, NextAction.SET_CORNERS, NextAction.OPEN_ANOTHER_PHOTO));
        }
        if (job.silhouette().isEmpty()) {
            return prompt(
                    "Both thicknesses are typed: have the outline of the knife found. It takes some seconds.",
                    stage == WorkflowStage.KNIFE ? NextAction.FIND_OUTLINE : NextAction.GO_TO_KNIFE);
        }
        if (!now.patternError().isEmpty() && stage.compareTo(WorkflowStage.SHEATH) >= 0) {
            return new NextStepPrompt(
                    now.patternError(), stage == WorkflowStage.SHEATH ? List.of() : List.of(NextAction.GO_TO_SHEATH));
        }
        return switch (stage) {
            case KNIFE ->
                prompt(
                        (job.asksForEdge() ? "Look which side is the edge: the outline does not tell for sure. " : "")
                                + describeWeakPlaces(job.unsure().size())
                                + "Look along the whole outline; where it left the knife, redraw it. Pull the marks"
                                + " where they belong. Red must run along the edge.",
                        NextAction.GO_TO_SHEATH);
            case SHEATH ->
                new NextStepPrompt(
                        "Choose the sheath: the pattern is drawn anew with each choice. Read the advice beneath it,"
                                + " and see the knife come out in the test draw.",
                        List.of(NextAction.GO_TO_LEATHER, NextAction.GO_TO_PAPER));
            case LEATHER ->
                prompt(
                        "Choose the leather: the pieces are laid out on it as you watch. Or leave it, and print the"
                                + " pattern.",
                        NextAction.GO_TO_PAPER);
            case PAPER ->
                prompt(
                        "Print, and measure the 50 mm square before you cut. If it is not 50 mm, type what it measures"
                                + " and print again.",
                        NextAction.SAVE_PDF);
            case BENCH ->
                new NextStepPrompt(
                        "Tick each step off as it is done: the space bar, or a click on its box. F11 shows the work large"
                                + " enough to read from the bench.",
                        List.of());
        };
    }

    /** Names the thicknesses that are still to be measured, and what waits for them. */
    private static String missing(Job job) {
        boolean handle = job.settings().handleThicknessMm().isEmpty();
        boolean spine = job.settings().spineThicknessMm().isEmpty();
        String what = handle && spine
                ? "handle and spine with a caliper and type both"
                : (handle ? "the handle" : "the spine") + " with a caliper and type its thickness";
        return "Measure " + what + ": " + (job.silhouette().isEmpty() ? "the outline" : "the pattern") + " waits for "
                + (handle && spine ? "them." : "it.");
    }

    private static String describeWeakPlaces(int left) {
        return switch (left) {
            case 0 -> "";
            case 1 -> "At one place the photo's edge was weak: look there first. ";
            default -> "At " + left + " places the photo's edge was weak: look there first. ";
        };
    }

    private static NextStepPrompt prompt(String text, NextAction action) {
        return new NextStepPrompt(text, List.of(action));
    }
}
