package weltwright.app.gui.pattern;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;

/** Shows some pieces of a pattern from the grain side, as large as they fit. */
public final class PieceCanvas extends DrawingCanvas {
    private List<Piece> pieces = List.of();
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;

    /**
     * Creates a canvas without pieces.
     *
     * @param name for screen readers
     */
    public PieceCanvas(String name) {
        setName("pieces concerned");
        getAccessibleContext().setAccessibleName(name);
    }

    /**
     * Shows other pieces.
     *
     * @param newUnit of the captions
     */
    public void setPieces(List<Piece> newPieces, MeasureUnit newUnit) {
        if (newPieces.equals(pieces) && newUnit == unit) {
            return;
        }
        pieces = List.copyOf(newPieces);
        unit = newUnit;
        getAccessibleContext()
                .setAccessibleDescription(pieces.stream().map(Piece::name).collect(Collectors.joining(", ")));
        zoomToFit();
    }

    /** Returns the pieces that are shown. */
    public List<Piece> pieces() {
        return pieces;
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return rowLayout().map(PieceRowLayout::extent);
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        rowLayout()
                .ifPresent(rows -> rows.placed().forEach(placed -> {
                    PiecePainter painter = new PiecePainter(g, viewport, placed, unit);
                    painter.paintPiece(EdgeAnnotations.none());
                    painter.paintCaption();
                }));
    }

    private Optional<PieceRowLayout> rowLayout() {
        Insets margins = margins();
        Dimension view = new Dimension(
                Math.max(1, getWidth() - margins.left - margins.right),
                Math.max(1, getHeight() - margins.top - margins.bottom));
        return pieces.isEmpty()
                ? Optional.empty()
                : Optional.of(PieceRowLayout.of(pieces, view, piece -> PiecePainter.captionPx(this, piece, unit)));
    }
}
