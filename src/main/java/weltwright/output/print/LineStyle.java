package weltwright.output.print;

import java.awt.Color;
import weltwright.message.Messages;
import weltwright.output.pdf.LineStroke;
import weltwright.sheath.pattern.Mark;

/**
 * The kinds of line on a pattern, told apart by their dashes and width, or by the shape drawn with them, so that a
 * black and white printer loses nothing.
 *
 * <p>All are black and at least {@value #NARROW_MM} mm wide, and dashes and gaps are long enough that a copier which
 * blurs by 0.15 mm and knows no grey keeps them. Widths of the series of ISO 128, wide to narrow as 2 to 1; parallel
 * lines keep its 0.7 mm between them (both from memory).
 */
public enum LineStyle {
    CUT(Messages.of(LineStyle.class).text("line-style.cut"), LineStroke.unbroken(0.5, Color.BLACK)),
    FOLD(
            Messages.of(LineStyle.class).text("line-style.fold"),
            LineStroke.dashed(0.35, Color.BLACK, 8.0, 1.5, 1.0, 1.5)),
    STITCH_ROW(
            Messages.of(LineStyle.class).text("line-style.stitch-row-and-its-holes"),
            LineStroke.unbroken(LineStyle.NARROW_MM, Color.BLACK)),
    STITCH_END(
            Messages.of(LineStyle.class).text("line-style.stitching-starts-or-ends"),
            LineStroke.unbroken(0.7, Color.BLACK)),
    NOTCH(
            Messages.of(LineStyle.class).text("line-style.notch-meets-its-partner"),
            LineStroke.unbroken(0.7, Color.BLACK)),
    GRAIN(
            Messages.of(LineStyle.class).text("line-style.least-stretch"),
            LineStroke.unbroken(LineStyle.NARROW_MM, Color.BLACK)),
    KNIFE(
            Messages.of(LineStyle.class).text("line-style.knife-inside"),
            LineStroke.dashed(LineStyle.NARROW_MM, Color.BLACK, 1.0, 1.5)),
    PLACE(
            Messages.of(LineStyle.class).text("line-style.a-piece-is-glued-on"),
            LineStroke.dashed(0.35, Color.BLACK, 3.0, 1.5)),
    SKIVE(
            Messages.of(LineStyle.class).text("line-style.skive-to-nothing"),
            LineStroke.dashed(0.35, Color.BLACK, 1.0, 1.0)),
    IRON(Messages.of(LineStyle.class).text("line-style.iron-s-first-tooth"), LineStroke.unbroken(0.5, Color.BLACK)),
    HOLE(Messages.of(LineStyle.class).text("line-style.hole"), LineStroke.unbroken(LineStyle.NARROW_MM, Color.BLACK)),
    EDGE_BEFORE(
            Messages.of(LineStyle.class).text("line-style.edge-finish-before-assembly"),
            LineStroke.unbroken(0.35, Color.BLACK)),
    EDGE_SEWN(
            Messages.of(LineStyle.class).text("line-style.edge-finish-when-sewn"),
            LineStroke.dashed(0.35, Color.BLACK, 1.5, 1.0)),
    EDGE_FREE(
            Messages.of(LineStyle.class).text("line-style.edge-finish-at-any-time"),
            LineStroke.dashed(0.35, Color.BLACK, 0.5, 1.0)),
    EDGE_UNWORKED(
            Messages.of(LineStyle.class).text("line-style.edge-nothing-to-do"), LineStroke.unbroken(0.4, Color.BLACK));

    private static final double NARROW_MM = 0.25;

    private final String meaning;
    private final LineStroke stroke;

    LineStyle(String meaning, LineStroke stroke) {
        this.meaning = meaning;
        this.stroke = stroke;
    }

    /** In a maker's words. */
    public String meaning() {
        return meaning;
    }

    /** Returns the stroke that it is drawn with. */
    public LineStroke stroke() {
        return stroke;
    }

    /** Whether it says what is done to an edge. */
    boolean isEdge() {
        return switch (this) {
            case EDGE_BEFORE, EDGE_SEWN, EDGE_FREE, EDGE_UNWORKED -> true;
            default -> false;
        };
    }

    /** The letter that stands at an edge of this style. */
    public String letter() {
        return Messages.of(LineStyle.class).text("line-style.letter." + this);
    }

    static LineStyle of(Mark.Kind kind) {
        return switch (kind) {
            case FOLD -> FOLD;
            case STITCH_ROW -> STITCH_ROW;
            case STITCH_END -> STITCH_END;
            case NOTCH -> NOTCH;
            case GRAIN -> GRAIN;
            case KNIFE -> KNIFE;
            case PLACE -> PLACE;
            case SKIVE -> SKIVE;
            case IRON -> IRON;
        };
    }
}
