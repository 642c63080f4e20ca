package weltwright.app.gui.shell;

import java.util.List;
import java.util.Optional;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.job.Job;
import weltwright.message.Messages;

/**
 * Tells the user what to do next, given the job and the selected stage.
 *
 * @param text one or two sentences
 * @param actions of the buttons beside the text, the proposed one first; none where there is nothing to do but wait
 */
record NextStepPrompt(String text, List<NextAction> actions) {
    private static final Messages TEXTS = Messages.of(NextStepPrompt.class);

    /** The actions of the buttons. */
    enum NextAction {
        OPEN_PHOTO(TEXTS.text("next-step-prompt.open-photo")),
        FIND_OUTLINE(TEXTS.text("next-step-prompt.find-the-outline")),
        GO_TO_KNIFE(TEXTS.text("next-step-prompt.to-the-knife")),
        GO_TO_SHEATH(TEXTS.text("next-step-prompt.to-the-sheath")),
        GO_TO_LEATHER(TEXTS.text("next-step-prompt.to-the-leather")),
        GO_TO_PAPER(TEXTS.text("next-step-prompt.to-the-paper")),
        SAVE_PDF(TEXTS.text("next-step-prompt.save-as-pdf")),
        TYPE_THICKNESSES(TEXTS.text("next-step-prompt.type-them")),
        MEND_ENTRY(TEXTS.text("next-step-prompt.mend-the-entry")),
        CHOOSE_GROUND(TEXTS.text("next-step-prompt.choose-the-ground")),
        MARK_ON_PHOTO(TEXTS.text("next-step-prompt.mark-on-photo")),
        SET_CORNERS(TEXTS.text("next-step-prompt.set-corners")),
        OPEN_ANOTHER_PHOTO(TEXTS.text("next-step-prompt.another-photo"));

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
     * @param outlineRejected whether a line was followed there that is not the outline of a knife
     * @param patternError why the pattern could not be made; empty where it could
     */
    record Circumstances(
            boolean tracing, String entryError, String traceError, boolean outlineRejected, String patternError) {
        static final Circumstances NONE = new Circumstances(false, "", "", false, "");
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
            return new NextStepPrompt(TEXTS.text("next-step-prompt.finding-the-outline-of-the"), List.of());
        }
        boolean empty = job.silhouette().isEmpty() && job.photo().isEmpty();
        if (empty) {
            return prompt(TEXTS.text("next-step-prompt.begin-with-a-photo-print"), NextAction.OPEN_PHOTO);
        }
        if (!job.settings().isMeasured()) {
            return prompt(missing(job), NextAction.TYPE_THICKNESSES);
        }
        if (job.silhouette().isEmpty() && !now.traceError().isEmpty()) {
            return new NextStepPrompt(
                    now.traceError(),
                    now.outlineRejected()
                            ? List.of(NextAction.MARK_ON_PHOTO, NextAction.OPEN_ANOTHER_PHOTO)
                            : List.of(NextAction.CHOOSE_GROUND, NextAction.SET_CORNERS, NextAction.OPEN_ANOTHER_PHOTO));
        }
        if (job.silhouette().isEmpty()) {
            return prompt(
                    TEXTS.text("next-step-prompt.both-thicknesses-are-typed-have"),
                    stage == WorkflowStage.KNIFE ? NextAction.FIND_OUTLINE : NextAction.GO_TO_KNIFE);
        }
        if (!now.patternError().isEmpty() && stage.compareTo(WorkflowStage.SHEATH) >= 0) {
            return new NextStepPrompt(
                    now.patternError(), stage == WorkflowStage.SHEATH ? List.of() : List.of(NextAction.GO_TO_SHEATH));
        }
        return switch (stage) {
            case KNIFE ->
                prompt(
                        job.asksForEdge()
                                ? TEXTS.text(
                                        "next-step-prompt.look-which-side-is-the",
                                        describeWeakPlaces(job.unsure().size()))
                                : TEXTS.text(
                                        "next-step-prompt.look-along-the-whole-outline",
                                        describeWeakPlaces(job.unsure().size())),
                        NextAction.GO_TO_SHEATH);
            case SHEATH ->
                new NextStepPrompt(
                        TEXTS.text("next-step-prompt.choose-the-sheath-the-pattern"),
                        List.of(NextAction.GO_TO_LEATHER, NextAction.GO_TO_PAPER));
            case LEATHER ->
                prompt(TEXTS.text("next-step-prompt.choose-the-leather-the-pieces"), NextAction.GO_TO_PAPER);
            case PAPER -> prompt(TEXTS.text("next-step-prompt.print-and-measure-the-50"), NextAction.SAVE_PDF);
            case BENCH -> new NextStepPrompt(TEXTS.text("next-step-prompt.tick-each-step-off-as"), List.of());
        };
    }

    /** Names the thicknesses that are still to be measured, and what waits for them. */
    private static String missing(Job job) {
        boolean handle = job.settings().handleThicknessMm().isEmpty();
        boolean spine = job.settings().spineThicknessMm().isEmpty();
        return TEXTS.text(
                "next-step-prompt.measure." + (handle && spine ? "both" : handle ? "handle" : "spine"),
                job.silhouette().isEmpty()
                        ? TEXTS.text("next-step-prompt.the-outline")
                        : TEXTS.text("next-step-prompt.the-pattern"));
    }

    private static String describeWeakPlaces(int left) {
        return switch (left) {
            case 0 -> "";
            case 1 -> TEXTS.text("next-step-prompt.at-one-place-the-photo");
            default -> TEXTS.text("next-step-prompt.at-places-the-photo-s", left);
        };
    }

    private static NextStepPrompt prompt(String text, NextAction action) {
        return new NextStepPrompt(text, List.of(action));
    }
}
