package weltwright.layout;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Polyline;
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
    private static final double LEAST_REST_MM = 20;

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

    /**
     * What is left when the stock is cut straight across at the used length: the largest part of it, with the flaws
     * that lie in it. Empty where less than a square of {@value #LEAST_REST_MM} mm is left.
     */
    public Optional<Stock> rest() {
        Polygon whole = stock.outline().polygon();
        Envelope extent = whole.getEnvelopeInternal();
        Geometry beyond = between(whole, extent.getMinX() + usedLengthMm, extent.getMaxX());
        return IntStream.range(0, beyond.getNumGeometries())
                .mapToObj(beyond::getGeometryN)
                .filter(part -> part instanceof Polygon && part.getArea() >= LEAST_REST_MM * LEAST_REST_MM)
                .map(Polygon.class::cast)
                .max(Comparator.comparingDouble(Polygon::getArea))
                .map(largest -> new Stock(
                        stock.name(),
                        Polyline.shell(largest),
                        stock.flaws().stream()
                                .filter(flaw -> flaw.polygon().intersects(largest))
                                .toList(),
                        stock.thicknessMm()));
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
