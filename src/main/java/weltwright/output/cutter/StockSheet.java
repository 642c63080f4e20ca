package weltwright.output.cutter;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.cutter.CutElement.Chain;
import weltwright.output.cutter.CutElement.Text;
import weltwright.sheath.pattern.Piece;

/** Draws a layout on stock for a cutting machine whose bed the stock lies on; the stock is drawn as a note. */
final class StockSheet {
    private static final double CAPITAL_MM = 3;

    private static final Messages TEXTS = Messages.of(StockSheet.class);

    private StockSheet() {}

    static CutSheet of(StockLayout layout, LeatherSide up, PageHeading heading) {
        Envelope extent = layout.stock().outline().polygon().getEnvelopeInternal();
        double width = extent.getWidth();
        Point corner = new Point(extent.getMinX(), extent.getMinY());
        UnaryOperator<Point> seen = p -> {
            Point onBed = p.minus(corner);
            return up == LeatherSide.GRAIN ? onBed : new Point(width - onBed.x(), onBed.y());
        };
        CutPieceIds ids = new CutPieceIds();
        List<CutPiece> pieces = layout.pieces().stream()
                .map(placed -> piece(placed, up, seen, ids))
                .toList();
        List<CutElement> notes = new ArrayList<>();
        Stream.of(
                        List.of(layout.stock().outline()),
                        layout.stock().flaws(),
                        layout.stock().poorer())
                .flatMap(List::stream)
                .forEach(line -> notes.add(note(line.map(seen))));
        notes.add(note(
                new Point(0, extent.getHeight() + 2),
                TEXTS.text("stock-sheet.stock", layout.stock().name(), up.words())));
        notes.add(note(new Point(0, extent.getHeight() + 2 + 2 * CAPITAL_MM), heading.line()));
        return new CutSheet(0, width, extent.getHeight(), pieces, notes);
    }

    private static CutPiece piece(PlacedPiece placed, LeatherSide up, UnaryOperator<Point> seen, CutPieceIds ids) {
        // The elements are as the machine sees the piece alone, and its motion is that of its grain side.
        UnaryOperator<Point> fromGrain = PieceElements.seen(up);
        List<CutElement> elements = PieceElements.of(placed.piece().piece(), up).stream()
                .map(element -> element.moved(q -> seen.apply(placed.motion().apply(fromGrain.apply(q)))))
                .toList();
        Piece piece = placed.piece().piece();
        String numbered = TEXTS.text("stock-sheet.piece", piece.name(), placed.sheath() + 1, piece.thicknessMm());
        return new CutPiece(ids.of(piece.id()), numbered, elements);
    }

    private static CutElement note(Polyline line) {
        return new CutElement(CutLayer.TEXT, new Chain(line), "");
    }

    private static CutElement note(Point from, String text) {
        return new CutElement(CutLayer.TEXT, new Text(text, from, CAPITAL_MM), "");
    }
}
