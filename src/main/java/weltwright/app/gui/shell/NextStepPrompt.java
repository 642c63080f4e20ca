package weltwright.app.gui.shell;

import java.util.Optional;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.job.Job;

/**
 * What the maker does next; follows from the job and from what is being looked at.
 *
 * @param words a sentence or two
 * @param deed what a button beside the words does, if one press is all that is needed
 */
record NextStepPrompt(String words, Optional<Deed> deed) {

    /** Something done with one press. */
    enum Deed {
        OPEN_PHOTO("Open photo…"),
        FIND_OUTLINE("Find the outline"),
        GO_TO_KNIFE("To the knife"),
        GO_TO_SHEATH("To the sheath"),
        GO_TO_PAPER("To the paper"),
        SAVE_PDF("Save as PDF…");

        private final String words;

        Deed(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /**
     * @param tracing whether the outline is being looked for
     * @param patternTrouble why there is no pattern, or empty
     */
    static NextStepPrompt of(Job job, WorkflowStage stage, boolean tracing, String patternTrouble) {
        if (tracing) {
            return new NextStepPrompt("Finding the outline of the knife. This takes some seconds.", Optional.empty());
        }
        if (job.silhouette().isEmpty()) {
            return job.photo().isEmpty()
                    ? step(
                            "Begin with a photo: print the sheet, lay the knife on it, photograph it from straight"
                                    + " above, and drop the photo here.",
                            Deed.OPEN_PHOTO)
                    : step(
                            "Measure handle and spine with a caliper and type both under Knife. Then have the outline"
                                    + " found.",
                            stage == WorkflowStage.KNIFE ? Deed.FIND_OUTLINE : Deed.GO_TO_KNIFE);
        }
        if (!patternTrouble.isEmpty() && (stage == WorkflowStage.SHEATH || stage == WorkflowStage.PAPER)) {
            return new NextStepPrompt(
                    patternTrouble, stage == WorkflowStage.PAPER ? Optional.of(Deed.GO_TO_SHEATH) : Optional.empty());
        }
        return switch (stage) {
            case ORDER -> step("Fill in whose knife it is, and when the sheath is to be ready.", Deed.GO_TO_KNIFE);
            case KNIFE ->
                step(
                        (job.asksForEdge() ? "Look which side is the edge: the outline does not tell for sure. " : "")
                                + weakPlaces(job.unsure().size())
                                + "Look along the whole outline; where it left the knife, redraw it. Pull the marks"
                                + " where they belong. Red must run along the edge.",
                        Deed.GO_TO_SHEATH);
            case SHEATH ->
                step(
                        "Choose the sheath: the pattern is drawn anew with each choice. Read the advice beneath it,"
                                + " and see the knife come out in the test draw.",
                        Deed.GO_TO_PAPER);
            case PAPER ->
                step(
                        "Print, and measure the 50 mm square before you cut. If it is not 50 mm, type what it measures"
                                + " and print again.",
                        Deed.SAVE_PDF);
        };
    }

    private static String weakPlaces(int left) {
        return switch (left) {
            case 0 -> "";
            case 1 -> "At one place the photo's edge was weak: look there first. ";
            default -> "At " + left + " places the photo's edge was weak: look there first. ";
        };
    }

    private static NextStepPrompt step(String words, Deed deed) {
        return new NextStepPrompt(words, Optional.of(deed));
    }
}
