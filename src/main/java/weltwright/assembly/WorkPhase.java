package weltwright.assembly;

/** The parts that the work falls into, in their order. No operation waits for one of a later phase. */
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

    /** Its title, in a maker's words. */
    public String words() {
        return words;
    }
}
