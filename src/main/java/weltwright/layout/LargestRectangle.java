package weltwright.layout;

import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * The largest rectangle along the axes inside an area with holes.
 *
 * <p>The area is covered by square cells, {@value #CELLS} along its longer side. The largest rectangle of cells that
 * lie inside is found row by row, each cell with the height of its column above (largest rectangle under a histogram,
 * in time in proportion to the number of cells). Its sides are then moved outwards one after the other as far as the
 * area goes. Between two rectangles of nearly equal size it may choose the lesser one.
 */
final class LargestRectangle {
    /** Cells along the longer side: 5 mm on a side of leather of 2 m. Chosen by eye, for a tenth of a second. */
    private static final int CELLS = 400;

    /** The sides are moved by steps halved down to this; much less than a cut is off. */
    private static final double EXACT_MM = 0.01;

    /** Rounding of coordinates by which a side may lie on the area's own. */
    private static final double ROUNDING_MM = 1e-6;

    private static final GeometryFactory JTS = new GeometryFactory();

    private LargestRectangle() {}

    /** The rectangle; empty where the area has no cell inside. */
    static Optional<Envelope> in(Geometry area) {
        Envelope extent = area.getEnvelopeInternal();
        if (extent.isNull() || extent.getArea() == 0) {
            return Optional.empty();
        }
        double cell = Math.max(extent.getWidth(), extent.getHeight()) / CELLS;
        return largestOfCells(area, extent, cell).map(box -> grown(box, area, cell));
    }

    private static Optional<Envelope> largestOfCells(Geometry area, Envelope extent, double cell) {
        int columns = (int) Math.max(1, Math.floor(extent.getWidth() / cell));
        int rows = (int) Math.max(1, Math.floor(extent.getHeight() / cell));
        // A cell lies inside where its middle does, as far from the boundary as its corner is from it.
        IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(area.buffer(-cell * Math.sqrt(0.5)));
        int[] heights = new int[columns + 1];
        int[] stack = new int[columns + 1];
        double most = 0;
        Envelope best = new Envelope();
        for (int row = 0; row < rows; row++) {
            double y = extent.getMinY() + (row + 0.5) * cell;
            for (int column = 0; column < columns; column++) {
                double x = extent.getMinX() + (column + 0.5) * cell;
                boolean free = inside.locate(new Coordinate(x, y)) != Location.EXTERIOR;
                heights[column] = free ? heights[column] + 1 : 0;
            }
            int top = 0;
            for (int column = 0; column <= columns; column++) {
                while (top > 0 && heights[stack[top - 1]] >= heights[column]) {
                    int height = heights[stack[--top]];
                    int left = top == 0 ? 0 : stack[top - 1] + 1;
                    double size = (double) height * (column - left);
                    if (size > most) {
                        most = size;
                        best = new Envelope(
                                extent.getMinX() + left * cell,
                                extent.getMinX() + column * cell,
                                extent.getMinY() + (row + 1 - height) * cell,
                                extent.getMinY() + (row + 1) * cell);
                    }
                }
                stack[top++] = column;
            }
        }
        return most > 0 ? Optional.of(best) : Optional.empty();
    }

    private static Envelope grown(Envelope cells, Geometry area, double cell) {
        PreparedGeometry room = PreparedGeometryFactory.prepare(area.buffer(ROUNDING_MM, 1));
        double[] sides = {cells.getMinX(), cells.getMaxX(), cells.getMinY(), cells.getMaxY()};
        int[] outwards = {-1, 1, -1, 1};
        for (double step = 2 * cell; step > EXACT_MM / 2; step /= 2) {
            for (int side = 0; side < sides.length; side++) {
                double before = sides[side];
                sides[side] = before + outwards[side] * step;
                if (!room.contains(JTS.toGeometry(new Envelope(sides[0], sides[1], sides[2], sides[3])))) {
                    sides[side] = before;
                }
            }
        }
        return new Envelope(sides[0], sides[1], sides[2], sides[3]);
    }
}
