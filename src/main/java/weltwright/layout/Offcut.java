package weltwright.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;
import weltwright.layout.stock.Stock;

/** Makes what a layout leaves of its stock into one piece. */
final class Offcut {
    /** What is smaller or narrower than a square of this side is no stock: a rivet cover is about as large. By eye. */
    private static final double LEAST_MM = 20;

    /** So much of the radius gives right-angled corners back, which are as far from a disc in them: more than √2. */
    private static final double REACH = 1.45;

    /** The outline of an offcut is simplified by this; chosen by eye. */
    private static final double SIMPLIFIED_MM = 0.1;

    private Offcut() {}

    /** The offcut, in the frame of the stock; empty where less than a square of {@value #LEAST_MM} mm is left. */
    static Optional<Stock> of(StockLayout layout, OffcutShape shape) {
        Stock stock = layout.stock();
        return switch (shape) {
            case STRAIGHT -> straight(layout).map(stock::part);
            case OUTLINE -> outline(layout).map(stock::part);
            case RECTANGLE ->
                LargestRectangle.in(without(stock.usable(), layout.pieces()))
                        .filter(box -> Math.min(box.getWidth(), box.getHeight()) >= LEAST_MM)
                        .map(box ->
                                stock.part((Polygon) stock.usable().getFactory().toGeometry(box)));
        };
    }

    private static Optional<Polygon> straight(StockLayout layout) {
        Geometry whole = GeometryFixer.fix(layout.stock().outline().polygon());
        Envelope extent = whole.getEnvelopeInternal();
        double cut = extent.getMinX() + layout.usedLengthMm();
        if (cut >= extent.getMaxX()) {
            return Optional.empty();
        }
        Envelope beyond = new Envelope(cut, extent.getMaxX(), extent.getMinY(), extent.getMaxY());
        return largest(OverlayNGRobust.overlay(whole, whole.getFactory().toGeometry(beyond), OverlayNG.INTERSECTION));
    }

    /** Necks and slivers narrower than {@link #LEAST_MM} go; what is left of the rest has the pieces' own outlines. */
    private static Optional<Polygon> outline(StockLayout layout) {
        Geometry left = without(GeometryFixer.fix(layout.stock().outline().polygon()), layout.pieces());
        Geometry wide = left.buffer(-LEAST_MM / 2, 16).buffer(REACH * LEAST_MM / 2, 16);
        return largest(wide)
                .flatMap(part -> largest(OverlayNGRobust.overlay(part, left, OverlayNG.INTERSECTION)))
                .flatMap(part -> largest(TopologyPreservingSimplifier.simplify(part, SIMPLIFIED_MM)));
    }

    private static Geometry without(Geometry leather, List<PlacedPiece> pieces) {
        List<Geometry> cut = new ArrayList<>();
        pieces.forEach(piece -> cut.add(piece.outline().polygon()));
        return cut.isEmpty()
                ? leather
                : OverlayNGRobust.overlay(leather, OverlayNGRobust.union(cut), OverlayNG.DIFFERENCE);
    }

    private static Optional<Polygon> largest(Geometry geometry) {
        return IntStream.range(0, geometry.getNumGeometries())
                .mapToObj(geometry::getGeometryN)
                .filter(part -> part instanceof Polygon && part.getArea() >= LEAST_MM * LEAST_MM)
                .map(Polygon.class::cast)
                .max(Comparator.comparingDouble(Polygon::getArea));
    }
}
