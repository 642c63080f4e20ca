package weltwright.app.gui.leather;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Envelope;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;

/**
 * One layout at its place in the drawing: below the layouts before it.
 *
 * @param layout in the frame of its stock
 * @param shift from that frame to the drawing's
 * @param stock outline of the stock, in the drawing's frame
 * @param flaws in the drawing's frame
 * @param poorer leather, in the drawing's frame
 * @param pieces cuts, in the drawing's frame, in the layout's order
 */
record StockDrawing(
        StockLayout layout, Point shift, Shape stock, List<Shape> flaws, List<Shape> poorer, List<Shape> pieces) {
    /** Room between two stocks for sizes and labels, as a part of the height of all. Chosen by eye. */
    private static final double BETWEEN_SHARE = 0.15;

    /** The layouts one below the other. */
    static List<StockDrawing> of(List<StockLayout> layouts) {
        List<StockDrawing> drawings = new ArrayList<>();
        double between = BETWEEN_SHARE
                * layouts.stream()
                        .mapToDouble(layout -> extent(layout).getHeight())
                        .sum();
        double top = 0;
        for (StockLayout layout : layouts) {
            Envelope extent = extent(layout);
            drawings.add(of(layout, new Point(-extent.getMinX(), top - extent.getMaxY())));
            top -= extent.getHeight() + between;
        }
        return drawings;
    }

    private static Envelope extent(StockLayout layout) {
        return layout.stock().outline().polygon().getEnvelopeInternal();
    }

    private static StockDrawing of(StockLayout layout, Point shift) {
        AffineTransform move = AffineTransform.getTranslateInstance(shift.x(), shift.y());
        return new StockDrawing(
                layout,
                shift,
                move.createTransformedShape(
                        AnnotationPainter.path(layout.stock().outline())),
                shapes(layout.stock().flaws(), move),
                shapes(layout.stock().poorer(), move),
                layout.pieces().stream().map(piece -> shape(piece, shift)).toList());
    }

    private static List<Shape> shapes(List<Polyline> lines, AffineTransform move) {
        return lines.stream()
                .map(line -> move.createTransformedShape(AnnotationPainter.path(line)))
                .toList();
    }

    /** The cut of a piece in the drawing's frame. */
    static Shape shape(PlacedPiece piece, Point shift) {
        Path2D path = AnnotationPainter.path(piece.outline());
        path.transform(AffineTransform.getTranslateInstance(shift.x(), shift.y()));
        return path;
    }

    Rectangle2D extent() {
        return stock.getBounds2D();
    }

    /** The number of the piece at a point of the drawing. */
    OptionalInt pieceAt(Point mm) {
        for (int i = 0; i < pieces.size(); i++) {
            if (pieces.get(i).contains(mm.x(), mm.y())) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    /** The abscissa up to which the stock is used, in the drawing's frame. */
    double usedX() {
        return extent().getMinX() + layout.usedLengthMm();
    }
}
