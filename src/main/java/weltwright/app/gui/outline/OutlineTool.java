package weltwright.app.gui.outline;

import weltwright.message.Messages;

/** The tools by which the mouse edits or measures an outline. */
enum OutlineTool {
    MARKS(
            Messages.of(OutlineTool.class).text("outline-tool.marks"),
            'M',
            Messages.of(OutlineTool.class).text("outline-tool.pull-the-marks-where-they")),
    POINTS(
            Messages.of(OutlineTool.class).text("outline-tool.points"),
            'P',
            Messages.of(OutlineTool.class).text("outline-tool.pull-the-points-of-the")),
    REDRAW(
            Messages.of(OutlineTool.class).text("outline-tool.redraw"),
            'R',
            Messages.of(OutlineTool.class).text("outline-tool.draw-along-the-knife-s")),
    WIDTH(
            Messages.of(OutlineTool.class).text("outline-tool.width"),
            'W',
            Messages.of(OutlineTool.class).text("outline-tool.click-where-you-measured-the")),
    KNIFE_BRUSH(
            Messages.of(OutlineTool.class).text("outline-tool.knife"),
            'I',
            Messages.of(OutlineTool.class).text("outline-tool.paint-over-what-belongs-to")),
    GROUND_BRUSH(
            Messages.of(OutlineTool.class).text("outline-tool.not-knife"),
            'O',
            Messages.of(OutlineTool.class).text("outline-tool.paint-over-what-is-no"));

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
