package weltwright.app.gui.model;

/** The four steps of a job, in their order. */
public enum WorkflowStage {
    ORDER("Order", '1', "Whose knife it is, dates and notes"),
    KNIFE("Knife", '2', "The photo and the outline"),
    SHEATH("Sheath", '3', "Leather, stitches, belt: the pattern"),
    PAPER("Paper", '4', "Save and print the pattern true to size");

    private final String words;
    private final char key;
    private final String tip;

    WorkflowStage(String words, char key, String tip) {
        this.words = words;
        this.key = key;
        this.tip = tip;
    }

    public String words() {
        return words;
    }

    /** The key that, with Alt, leads to it; printed before its name. */
    public char key() {
        return key;
    }

    public String tip() {
        return tip;
    }
}
