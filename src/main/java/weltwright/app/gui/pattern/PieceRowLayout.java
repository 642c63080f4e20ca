package weltwright.app.gui.pattern;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Piece;

/**
 * Lays pieces side by side in rows, one below the other, in their order, each with room for a caption above it. No
 * layout on leather; only for the screen.
 *
 * @param placed each piece with the shift from its own frame to the drawing's
 * @param extent of all pieces and captions, in mm
 */
public record PieceRowLayout(List<Placed> placed, Rectangle2D extent) {
    // Chosen by eye.
    private static final double GAP_MM = 14;

    /** The scale is found by iteration until it changes by less than this share. */
    private static final double SETTLED = 0.01;

    private static final int MOST_ITERATIONS = 20;
    private static final int MOST_WIDTHS = 200;

    /** One piece and where it went. */
    public record Placed(Piece piece, Point shift, Rectangle2D box) {}

    /** A piece, its extent in its own frame in mm, and the size of its caption in pixels. */
    private record Captioned(Piece piece, Rectangle2D box, Dimension captionPx) {
        double widthMm(double pxPerMm) {
            return Math.max(box.getWidth(), captionPx.width / pxPerMm);
        }

        double captionMm(double pxPerMm) {
            return captionPx.height / pxPerMm;
        }
    }

    /**
     * Gives the rows that fill a view at the largest scale. A caption has its size in pixels, so the smaller the scale
     * the more mm it takes: from the scale without captions on, rows and scale are found in turns. Each scale is
     * smaller than the one before, down to the largest at which the captions find room.
     *
     * @param view in pixels; at least 1 by 1
     * @param captionPx the size of a piece's caption
     */
    public static PieceRowLayout of(List<Piece> pieces, Dimension view, Function<Piece, Dimension> captionPx) {
        List<Captioned> captioned = pieces.stream()
                .map(piece -> new Captioned(piece, box(piece), captionPx.apply(piece)))
                .toList();
        PieceRowLayout rows = widest(captioned, view, Double.POSITIVE_INFINITY);
        double scale = rows.scale(view);
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            rows = widest(captioned, view, scale);
            double next = rows.scale(view);
            if (next > (1 - SETTLED) * scale) {
                break;
            }
            scale = next;
        }
        return rows;
    }

    /** The scale at which a view shows all of it, in pixels per mm. */
    private double scale(Dimension view) {
        return Math.min(view.width / extent.getWidth(), view.height / extent.getHeight());
    }

    private static PieceRowLayout widest(List<Captioned> pieces, Dimension view, double pxPerMm) {
        double widest =
                pieces.stream().mapToDouble(p -> p.widthMm(pxPerMm)).max().orElse(1);
        double all =
                pieces.stream().mapToDouble(p -> p.widthMm(pxPerMm) + GAP_MM).sum();
        PieceRowLayout best = within(pieces, widest, pxPerMm);
        double step = Math.max(GAP_MM, (all - widest) / MOST_WIDTHS); // in a narrow view captions take kilometres
        for (double width = widest; width < all + step; width += step) {
            PieceRowLayout rows = within(pieces, width, pxPerMm);
            if (rows.scale(view) > best.scale(view)) {
                best = rows;
            }
        }
        return best;
    }

    private static PieceRowLayout within(List<Captioned> pieces, double widthMm, double pxPerMm) {
        List<Placed> placed = new ArrayList<>();
        Rectangle2D extent = null;
        double x = 0;
        double top = 0;
        double rowHeight = 0;
        for (Captioned piece : pieces) {
            Rectangle2D box = piece.box();
            double width = piece.widthMm(pxPerMm);
            double caption = piece.captionMm(pxPerMm);
            if (x > 0 && x + width > widthMm + 1e-9) {
                x = 0;
                top -= rowHeight + GAP_MM;
                rowHeight = 0;
            }
            Rectangle2D at =
                    new Rectangle2D.Double(x, top - caption - box.getHeight(), box.getWidth(), box.getHeight());
            placed.add(new Placed(piece.piece(), new Point(at.getX() - box.getX(), at.getY() - box.getY()), at));
            Rectangle2D captioned = new Rectangle2D.Double(at.getX(), at.getY(), width, at.getHeight() + caption);
            extent = extent == null ? captioned : extent.createUnion(captioned);
            x += width + GAP_MM;
            rowHeight = Math.max(rowHeight, box.getHeight() + caption);
        }
        return new PieceRowLayout(placed, extent == null ? new Rectangle2D.Double(0, 0, 1, 1) : extent);
    }

    private static Rectangle2D box(Piece piece) {
        var box = piece.outline().lineString().getEnvelopeInternal();
        return new Rectangle2D.Double(box.getMinX(), box.getMinY(), box.getWidth(), box.getHeight());
    }
}
