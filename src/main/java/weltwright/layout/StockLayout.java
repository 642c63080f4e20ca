package weltwright.layout;

import java.util.List;
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
        Geometry usable = stock.usable();
        Envelope extent = stock.outline().polygon().getEnvelopeInternal();
        Envelope used =
                new Envelope(extent.getMinX(), extent.getMinX() + usedLengthMm, extent.getMinY(), extent.getMaxY());
        return OverlayNGRobust.overlay(usable, usable.getFactory().toGeometry(used), OverlayNG.INTERSECTION)
                .getArea();
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
