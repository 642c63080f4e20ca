package weltwright.layout;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.layout.collision.OutlineShape;
import weltwright.layout.collision.TurnedShape;
import weltwright.layout.search.FixedShape;
import weltwright.layout.search.SearchItem;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;

/**
 * Stock as the search sees it: a box, with fixed shapes where there is no leather to use.
 *
 * <p>Half of the gap between pieces is added to each piece; what is left of the distance to the edge is taken from the
 * stock. Where outlines are simplified, they only grow. From poorer leather a piece that must not lie on it keeps half
 * of the gap.
 */
final class StockBox {
    /** How far simplified outlines may lie outside of the true ones: much less than a knife is off. Chosen by eye. */
    private static final double SIMPLIFIED_MM = 0.1;

    /** Parts of the surroundings smaller than this are left out: they are rounding. */
    private static final double LEAST_AREA_MM2 = 1e-6;

    private final Spacing spacing;
    private final double insetMm;
    private final double stockLeftMm;
    private final Envelope box;
    private final List<FixedShape> fixed = new ArrayList<>();
    private final double freeMm2;

    StockBox(Stock stock, Spacing spacing) {
        this.spacing = spacing;
        insetMm = Math.max(0, spacing.edgeMm() - spacing.betweenMm() / 2);
        stockLeftMm = stock.outline().polygon().getEnvelopeInternal().getMinX();
        Geometry free = stock.usable().buffer(-insetMm, 24);
        box = free.getEnvelopeInternal();
        freeMm2 = free.getArea();
        Geometry whole = new GeometryFactory().toGeometry(box);
        Geometry surroundings = OverlayNGRobust.overlay(whole, free, OverlayNG.DIFFERENCE);
        if (!box.isNull()) {
            addSimple(grown(surroundings), false);
            for (Polyline line : stock.poorer()) {
                addSimple(
                        grown(OverlayNGRobust.overlay(
                                whole, GeometryFixer.fix(line.polygon()), OverlayNG.INTERSECTION)),
                        true);
            }
        }
    }

    private static Geometry grown(Geometry geometry) {
        return TopologyPreservingSimplifier.simplify(geometry.buffer(SIMPLIFIED_MM, 4), SIMPLIFIED_MM);
    }

    /** Adds polygons as fixed shapes; one with holes is cut upright through a hole. */
    private void addSimple(Geometry geometry, boolean forSome) {
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            if (!(geometry.getGeometryN(i) instanceof Polygon polygon) || polygon.getArea() < LEAST_AREA_MM2) {
                continue;
            }
            if (polygon.getNumInteriorRing() == 0) {
                OutlineShape shape = OutlineShape.of(Polyline.shell(polygon).points());
                Point place = inBox(shape.reference());
                fixed.add(new FixedShape(new TurnedShape(shape, 0), place.x(), place.y(), forSome));
            } else {
                Envelope extent = polygon.getEnvelopeInternal();
                double x = polygon.getInteriorRingN(0).getEnvelopeInternal().centre().x;
                GeometryFactory factory = polygon.getFactory();
                for (Envelope side : List.of(
                        new Envelope(extent.getMinX(), x, extent.getMinY(), extent.getMaxY()),
                        new Envelope(x, extent.getMaxX(), extent.getMinY(), extent.getMaxY()))) {
                    addSimple(
                            OverlayNGRobust.overlay(polygon, factory.toGeometry(side), OverlayNG.INTERSECTION),
                            forSome);
                }
            }
        }
    }

    /** A piece as the search places it. */
    SearchItem item(LeatherPiece piece) {
        Region room = new Region((Polygon)
                grown(Region.of(piece.outline()).grown(spacing.betweenMm() / 2).area()));
        return new SearchItem(OutlineShape.of(room.boundary().points()), piece.turns(), piece.goodLeather());
    }

    double lengthMm() {
        return box.isNull() ? 0 : box.getWidth();
    }

    double heightMm() {
        return box.isNull() ? 0 : box.getHeight();
    }

    List<FixedShape> fixed() {
        return fixed;
    }

    /** The area on which pieces, with half of the gap round them, may lie. */
    double freeMm2() {
        return freeMm2;
    }

    /** From the frame of the stock to that of the box. */
    Point inBox(Point p) {
        return new Point(p.x() - box.getMinX(), p.y() - box.getMinY());
    }

    /** From the frame of the box to that of the stock. */
    Point onStock(Point p) {
        return new Point(p.x() + box.getMinX(), p.y() + box.getMinY());
    }

    /** What of the stock's length a layout in the box uses. */
    double usedLengthMm(double boxLengthMm) {
        return box.getMinX() + boxLengthMm + insetMm - stockLeftMm;
    }

    /** The length of a layout in the box that uses so much of the stock's length. */
    double boxLengthMm(double usedLengthMm) {
        return usedLengthMm - usedLengthMm(0);
    }
}
