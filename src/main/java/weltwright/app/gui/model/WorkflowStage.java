package weltwright.app.gui.model;

/** The stages of a job, in their order; the window shows one form for each. */
public enum WorkflowStage {
    ORDER("Order", '1', "Whose knife it is, dates and notes"),
    KNIFE("Knife", '2', "The photo and the outline"),
    SHEATH("Sheath", '3', "Leather, stitches, belt: the pattern"),
    PAPER("Paper", '4', "Save and print the pattern true to size");

    private final String label;
    private final char mnemonic;
    private final String toolTip;

    WorkflowStage(String label, char mnemonic, String toolTip) {
        this.label = label;
        this.mnemonic = mnemonic;
        this.toolTip = toolTip;
    }

    public String label() {
        return label;
    }

    /** Returns the key that selects the stage together with Alt. */
    public char mnemonic() {
        return mnemonic;
    }

    public String toolTip() {
        return toolTip;
    }
}
