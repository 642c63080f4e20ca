package weltwright.assembly;

/** The phases of the work, in order. No operation waits for one of a later phase. */
public enum WorkPhase {
    PREPARE("Cut and mark"),
    HOLES("Grooves and holes"),
    EDGES("Edges out of reach later, and dye"),
    JOIN("Fold, glue and sew"),
    SHAPE("Trim and form"),
    FINISH("Finish");

    private final String words;

    WorkPhase(String words) {
        this.words = words;
    }

    /** Returns its title for the maker. */
    public String words() {
        return words;
    }
}
