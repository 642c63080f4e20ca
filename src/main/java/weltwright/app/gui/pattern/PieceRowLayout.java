package weltwright.app.gui.pattern;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Piece;

/**
 * Pieces side by side, each where it can be seen whole: in rows, one below the other, in their order. No layout on
 * leather; only to be looked at.
 *
 * @param placed each piece with the shift from its own frame to the drawing's
 * @param extent of all of them, with room for words above each
 */
record PieceRowLayout(List<Placed> placed, Rectangle2D extent) {
    private static final double GAP_MM = 14;
    private static final double WORDS_MM = 18;
    private static final double LEAST_WIDTH_MM = 52; // for the words

    /** One piece and where it went. */
    record Placed(Piece piece, Point shift, Rectangle2D box) {}

    /** Rows about as wide, for their height, as {@code aspect} says (width over height). */
    static PieceRowLayout of(List<Piece> pieces, double aspect) {
        double widest = pieces.stream().mapToDouble(PieceRowLayout::width).max().orElse(1);
        double all = pieces.stream().mapToDouble(p -> width(p) + GAP_MM).sum();
        PieceRowLayout best = within(pieces, widest);
        for (double width = widest; width < all + GAP_MM; width += GAP_MM) {
            PieceRowLayout rows = within(pieces, width);
            if (room(rows, aspect) < room(best, aspect)) {
                best = rows;
            }
        }
        return best;
    }

    private static PieceRowLayout within(List<Piece> pieces, double width) {
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
            Rectangle2D at =
                    new Rectangle2D.Double(x, top - WORDS_MM - box.getHeight(), box.getWidth(), box.getHeight());
            placed.add(new Placed(piece, new Point(at.getX() - box.getX(), at.getY() - box.getY()), at));
            Rectangle2D withWords =
                    new Rectangle2D.Double(at.getX(), at.getY(), width(piece), at.getHeight() + WORDS_MM);
            extent = extent == null ? withWords : extent.createUnion(withWords);
            x += width(piece) + GAP_MM;
            rowHeight = Math.max(rowHeight, box.getHeight() + WORDS_MM);
        }
        return new PieceRowLayout(placed, extent == null ? new Rectangle2D.Double(0, 0, 1, 1) : extent);
    }

    /** How wide a window of that aspect must be to show them. */
    private static double room(PieceRowLayout rows, double aspect) {
        return Math.max(rows.extent.getWidth(), rows.extent.getHeight() * aspect);
    }

    private static double width(Piece piece) {
        return Math.max(LEAST_WIDTH_MM, box(piece).getWidth());
    }

    private static Rectangle2D box(Piece piece) {
        var box = piece.outline().lineString().getEnvelopeInternal();
        return new Rectangle2D.Double(box.getMinX(), box.getMinY(), box.getWidth(), box.getHeight());
    }
}
