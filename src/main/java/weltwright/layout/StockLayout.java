package weltwright.layout;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;

/**
 * Pieces laid out on stock.
 *
 * @param stock that they are cut from
 * @param sheaths the sheaths that are whole, in the order of their numbers
 * @param pieces all their pieces
 * @param usedLengthMm from the left end of the stock to the right end of the last piece, with the distance that it
 *     keeps from an edge
 */
public record StockLayout(Stock stock, List<SheathPieces> sheaths, List<PlacedPiece> pieces, double usedLengthMm) {
    public StockLayout {
        sheaths = List.copyOf(sheaths);
        pieces = List.copyOf(pieces);
    }

    /** The area of all pieces. */
    public double piecesAreaMm2() {
        return sheaths.stream().mapToDouble(SheathPieces::areaMm2).sum();
    }

    /** The area of the usable leather up to the used length. */
    public double usedAreaMm2() {
        Envelope extent = stock.outline().polygon().getEnvelopeInternal();
        return between(stock.usable(), extent.getMinX(), extent.getMinX() + usedLengthMm)
                .getArea();
    }

    /** What is left when the stock is cut straight across at the used length, as {@link #rest(OffcutShape)}. */
    public Optional<Stock> rest() {
        return rest(OffcutShape.STRAIGHT);
    }

    /**
     * What is left of the stock in one piece, with the flaws and the poorer leather that lie in it, in its frame. Empty
     * where that is no more than a scrap.
     */
    public Optional<Stock> rest(OffcutShape shape) {
        return Offcut.of(this, shape);
    }

    private static Geometry between(Geometry geometry, double left, double right) {
        Envelope extent = geometry.getEnvelopeInternal();
        if (right <= left) {
            return geometry.getFactory().createPolygon();
        }
        Envelope part = new Envelope(left, right, extent.getMinY(), extent.getMaxY());
        return OverlayNGRobust.overlay(geometry, geometry.getFactory().toGeometry(part), OverlayNG.INTERSECTION);
    }

    /** The pieces of one sheath. */
    public List<PlacedPiece> piecesOf(int sheath) {
        return pieces.stream().filter(piece -> piece.sheath() == sheath).toList();
    }

    /** How many of the sheaths have a name. */
    public int count(String name) {
        return (int) IntStream.range(0, sheaths.size())
                .filter(i -> sheaths.get(i).name().equals(name))
                .count();
    }
}
