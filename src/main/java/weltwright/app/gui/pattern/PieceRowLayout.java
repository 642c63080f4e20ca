package weltwright.app.gui.pattern;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Piece;

/**
 * A layout of pieces in rows, in their order and without overlap, for the screen; the pieces are not nested. In mm, y
 * up.
 *
 * @param placed each piece with the shift from its own frame to the drawing's
 * @param extent of all pieces with their titles
 */
record PieceRowLayout(List<Placed> placed, Rectangle2D extent) {
    // Chosen by eye.
    private static final double GAP_MM = 14;
    private static final double TITLE_MM = 18;
    private static final double MIN_WIDTH_MM = 52; // of the titles

    /** A piece, its shift, and its bounds in the drawing. */
    record Placed(Piece piece, Point shift, Rectangle2D box) {}

    /**
     * Tries row widths in steps of the gap and takes the one whose layout is shown largest.
     *
     * @param aspect width over height of the canvas
     */
    static PieceRowLayout of(List<Piece> pieces, double aspect) {
        double widest = pieces.stream().mapToDouble(PieceRowLayout::width).max().orElse(1);
        double totalWidth = pieces.stream().mapToDouble(p -> width(p) + GAP_MM).sum();
        PieceRowLayout best = layOut(pieces, widest);
        for (double width = widest; width < totalWidth + GAP_MM; width += GAP_MM) {
            PieceRowLayout rows = layOut(pieces, width);
            if (requiredWidth(rows, aspect) < requiredWidth(best, aspect)) {
                best = rows;
            }
        }
        return best;
    }

    private static PieceRowLayout layOut(List<Piece> pieces, double width) {
        List<Placed> placed = new ArrayList<>();
        Rectangle2D extent = null;
        double x = 0;
        double top = 0;
        double rowHeight = 0;
        for (Piece piece : pieces) {
            Rectangle2D box = box(piece);
            if (x > 0 && x + width(piece) > width + 1e-9) {
                x = 0;
                top -= rowHeight + GAP_MM;
                rowHeight = 0;
            }
            Rectangle2D bounds =
                    new Rectangle2D.Double(x, top - TITLE_MM - box.getHeight(), box.getWidth(), box.getHeight());
            placed.add(new Placed(piece, new Point(bounds.getX() - box.getX(), bounds.getY() - box.getY()), bounds));
            Rectangle2D withTitle =
                    new Rectangle2D.Double(bounds.getX(), bounds.getY(), width(piece), bounds.getHeight() + TITLE_MM);
            extent = extent == null ? withTitle : extent.createUnion(withTitle);
            x += width(piece) + GAP_MM;
            rowHeight = Math.max(rowHeight, box.getHeight() + TITLE_MM);
        }
        return new PieceRowLayout(placed, extent == null ? new Rectangle2D.Double(0, 0, 1, 1) : extent);
    }

    /** Returns the width of the smallest area with the aspect that contains the layout. */
    private static double requiredWidth(PieceRowLayout rows, double aspect) {
        return Math.max(rows.extent.getWidth(), rows.extent.getHeight() * aspect);
    }

    private static double width(Piece piece) {
        return Math.max(MIN_WIDTH_MM, box(piece).getWidth());
    }

    private static Rectangle2D box(Piece piece) {
        var box = piece.outline().lineString().getEnvelopeInternal();
        return new Rectangle2D.Double(box.getMinX(), box.getMinY(), box.getWidth(), box.getHeight());
    }
}
