package weltwright.app.gui.outline;

/** The tools by which the mouse edits or measures an outline. */
enum OutlineTool {
    MARKS(
            "Marks",
            'M',
            "Pull the marks where they belong. Keys: T, H, S, B, or F and K for a guard, take hold of one, the arrows move it."),
    POINTS(
            "Points",
            'P',
            "Pull the points of the outline. A double click on the line adds one; a right click removes it, makes it a"
                    + " corner or smooth. Keys: , and . go from point to point, the arrows move it, Insert adds, Delete"
                    + " removes, C turns corner and smooth, E pulls the line there to the edge."),
    REDRAW(
            "Redraw",
            'R',
            "Draw along the knife's edge, from where the outline is right to where it is right again: it follows the"
                    + " edge that the photo shows nearest to your line. Zoom in where something else lies close by."),
    WIDTH(
            "Width",
            'W',
            "Click where you measured the width with a caliper, and type it at the left. Keys: the arrows move the line,"
                    + " Enter takes it."),
    KNIFE_BRUSH(
            "Knife",
            'I',
            "Paint over what belongs to the knife and was left out: the outline follows. Delete takes all painted marks"
                    + " away."),
    GROUND_BRUSH(
            "Not knife",
            'O',
            "Paint over what is no part of the knife, such as a pencil or a shadow: the outline follows. Delete takes all"
                    + " painted marks away.");

    private final String label;
    private final char key;
    private final String hint;

    OutlineTool(String label, char key, String hint) {
        this.label = label;
        this.key = key;
        this.hint = hint;
    }

    /** Returns whether the mouse paints marks of the trace. */
    boolean isBrush() {
        return this == KNIFE_BRUSH || this == GROUND_BRUSH;
    }

    String label() {
        return label;
    }

    /** Returns the key that selects the tool in the canvas. */
    char key() {
        return key;
    }

    /** Returns a hint on its use. */
    String hint() {
        return hint;
    }
}
