package weltwright.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import weltwright.layout.collision.TurnedShape;
import weltwright.layout.search.FixedShape;
import weltwright.layout.search.SearchItem;
import weltwright.layout.stock.LeatherPiece;
import weltwright.sheath.pattern.Piece;

/**
 * Straps of one width end to end, in rows along the lower edge of a panel, so that a strap cutter cuts a row in one
 * pull. Rows of one width lie side by side, the widest at the edge.
 *
 * @param places of straps in the box, by the number of the piece
 * @param heightMm of all rows
 */
record StrapRows(Map<Integer, FixedShape> places, double heightMm) {
    private static final Set<Piece.Kind> STRAPS =
            EnumSet.of(Piece.Kind.BELT_STRAP, Piece.Kind.RING_STRAP, Piece.Kind.HANDLE_STRAP);

    /** A strap covers so much of the least rectangle round it: its sides are straight, its ends may be round. */
    private static final double RECTANGLE_SHARE = 0.9;

    /** What a strap cutter can be set to. Chosen by eye. */
    private static final double SAME_WIDTH_MM = 0.1;

    StrapRows {
        places = Map.copyOf(places);
    }

    /**
     * Rows of the straps of which two or more have one width. A strap that may not lie along the panel, or is longer
     * than the row, is left out.
     *
     * @param pieces all that are laid out
     * @param items the pieces as the search places them
     * @param lengthMm of the longest row
     */
    static StrapRows of(List<LeatherPiece> pieces, Function<LeatherPiece, SearchItem> items, double lengthMm) {
        List<Strap> straps = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            LeatherPiece piece = pieces.get(i);
            if (STRAPS.contains(piece.piece().kind()) && isRectangle(piece)) {
                TurnedShape shape = new TurnedShape(items.apply(piece).shape(), turnAlong(piece));
                if (piece.turns().allow(shape.turnRad()) && shape.width() <= lengthMm) {
                    straps.add(new Strap(i, shape));
                }
            }
        }
        straps.sort(Comparator.comparingDouble(strap -> -strap.shape.height()));
        Map<Integer, FixedShape> places = new HashMap<>();
        double height = 0;
        for (int from = 0, to; from < straps.size(); from = to) {
            double widest = straps.get(from).shape.height();
            to = from;
            while (to < straps.size() && straps.get(to).shape.height() > widest - SAME_WIDTH_MM) {
                to++;
            }
            if (to - from > 1) {
                height = fill(straps.subList(from, to), widest, lengthMm, height, places);
            }
        }
        return new StrapRows(places, height);
    }

    private record Strap(int piece, TurnedShape shape) {}

    /** Fills rows from a height up, the longest strap first, each into the first row with room. Returns their top. */
    private static double fill(
            List<Strap> straps, double widthMm, double lengthMm, double bottom, Map<Integer, FixedShape> places) {
        List<Double> ends = new ArrayList<>();
        straps.stream()
                .sorted(Comparator.comparingDouble(strap -> -strap.shape.width()))
                .forEach(strap -> {
                    int row = 0;
                    while (row < ends.size() && ends.get(row) + strap.shape.width() > lengthMm) {
                        row++;
                    }
                    if (row == ends.size()) {
                        ends.add(0.0);
                    }
                    double left = ends.set(row, ends.get(row) + strap.shape.width());
                    places.put(
                            strap.piece,
                            new FixedShape(
                                    strap.shape,
                                    left - strap.shape.minX(),
                                    bottom + row * widthMm - strap.shape.minY()));
                });
        return bottom + ends.size() * widthMm;
    }

    private static boolean isRectangle(LeatherPiece piece) {
        Polygon outline = piece.outline().polygon();
        return outline.getArea()
                >= RECTANGLE_SHARE
                        * MinimumAreaRectangle.getMinimumRectangle(outline).getArea();
    }

    /** The turn, within a quarter turn, that lays the long sides of the least rectangle along x. */
    private static double turnAlong(LeatherPiece piece) {
        Geometry rectangle =
                MinimumAreaRectangle.getMinimumRectangle(piece.outline().polygon());
        Coordinate[] corners = rectangle.getCoordinates();
        boolean firstIsLong = corners[0].distance(corners[1]) >= corners[1].distance(corners[2]);
        Coordinate from = corners[firstIsLong ? 0 : 1];
        Coordinate to = corners[firstIsLong ? 1 : 2];
        double angle = Math.atan2(to.y - from.y, to.x - from.x);
        return -Math.IEEEremainder(angle, Math.PI);
    }
}
