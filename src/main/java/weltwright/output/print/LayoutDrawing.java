package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;
import weltwright.output.ShapePacking;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;

/**
 * A layout as it lies on the leather: the pieces with all their marks, the stock's edge, its flaws and poorer parts.
 *
 * @param name of the stock
 * @param pieces with their places on the stock
 * @param labels those that lie inside of their piece, for others would lie on a neighbour
 * @param footprint of the pieces alone: pages that would show only bare leather are left out
 */
record LayoutDrawing(String name, Stock stock, List<Placed> pieces, List<Label> labels, Geometry footprint)
        implements PrintedDrawing {
    private static final Messages TEXTS = Messages.of(LayoutDrawing.class);

    private static final LineStroke EDGE = LineStroke.dashed(0.35, Color.BLACK, 6.0, 2.0);
    private static final LineStroke FLAW = LineStroke.dashed(0.35, Color.BLACK, 2.0, 1.0);
    private static final LineStroke POORER = LineStroke.dashed(0.25, Color.BLACK, 1.0, 2.0);

    /** A piece and its place on the stock. */
    record Placed(PieceDrawing drawing, RigidMotion motion) {}

    static LayoutDrawing of(StockLayout layout, PdfTypeface typeface) {
        List<Placed> pieces = new ArrayList<>();
        List<Label> labels = new ArrayList<>();
        List<Geometry> footprints = new ArrayList<>();
        for (PlacedPiece placed : layout.pieces()) {
            PieceCaption caption = new PieceCaption(
                    List.of(placed.piece().piece().name(), TEXTS.text("layout-drawing.sheath", placed.sheath() + 1)),
                    List.of());
            PieceDrawing drawing = PieceDrawing.of(placed.piece().piece(), List.of(), caption, typeface);
            pieces.add(new Placed(drawing, placed.motion()));
            Geometry inside = placed.piece().outline().polygon();
            drawing.labels().stream()
                    .filter(label -> inside.contains(label.box()))
                    .forEach(label -> labels.add(label.placed(placed.motion())));
            footprints.add(ShapePacking.moved(inside, placed.motion()));
        }
        return new LayoutDrawing(
                layout.stock().name(), layout.stock(), pieces, labels, OverlayNGRobust.union(footprints));
    }

    @Override
    public String caption() {
        return name;
    }

    @Override
    public Geometry lines() {
        List<Geometry> lines = new ArrayList<>();
        pieces.forEach(placed -> lines.add(ShapePacking.moved(placed.drawing.lines(), placed.motion)));
        return lines.get(0).getFactory().buildGeometry(lines);
    }

    @Override
    public void draw(PdfCanvas canvas, RigidMotion placement) throws IOException {
        canvas.draw(EDGE, stock.outline().map(placement::apply));
        for (Polyline flaw : stock.flaws()) {
            canvas.draw(FLAW, flaw.map(placement::apply));
        }
        for (Polyline part : stock.poorer()) {
            canvas.draw(POORER, part.map(placement::apply));
        }
        for (Placed placed : pieces) {
            placed.drawing.draw(
                    canvas,
                    new RigidMotion(
                            placement.angleRad() + placed.motion.angleRad(), placement.apply(placed.motion.shift())));
        }
    }
}
