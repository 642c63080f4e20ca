package weltwright.output;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.units.PrintScale;

/**
 * Where things go on an empty page: a square to check in the lower left corner, a bar to the right along the lower
 * margin and one up the left margin, and the rest for pieces. In mm of the paper, from its lower left corner.
 *
 * <p>What is drawn keeps {@link #MARGIN_MM} from the edge both of the paper and of the file's page, which for a
 * corrected print are not the same: most printers leave that much blank.
 *
 * @param widthMm of the paper
 * @param heightMm of the paper
 * @param printable the area inside the margins
 */
public record PageFrame(double widthMm, double heightMm, Envelope printable) {
    static final double MARGIN_MM = 9;
    public static final double SQUARE_MM = 50;
    /** Room across a bar with its ticks and numbers. */
    public static final double BAR_DEPTH_MM = 10;
    /** Long enough for 150 mm and for 6 in, with the names of the units behind. */
    static final double BAR_LENGTH_MM = 160;

    private static final double AIR_MM = 1.5;
    private static final GeometryFactory JTS = new GeometryFactory();

    public static PageFrame of(double widthMm, double heightMm, PrintScale scale) {
        double halfWidth = (widthMm / 2 - MARGIN_MM) * Math.min(1, scale.x());
        double halfHeight = (heightMm / 2 - MARGIN_MM) * Math.min(1, scale.y());
        return new PageFrame(
                widthMm,
                heightMm,
                new Envelope(
                        widthMm / 2 - halfWidth,
                        widthMm / 2 + halfWidth,
                        heightMm / 2 - halfHeight,
                        heightMm / 2 + halfHeight));
    }

    /** The lower left corner of the square, and where both bars begin. */
    public Point squareCorner() {
        return new Point(printable.getMinX() + BAR_DEPTH_MM, printable.getMinY() + BAR_DEPTH_MM);
    }

    /** What is left for pieces. */
    public Geometry free() {
        Point corner = squareCorner();
        double x = corner.x();
        double y = corner.y();
        Geometry free = JTS.toGeometry(printable);
        for (Envelope used : List.of(
                new Envelope(printable.getMinX(), x + BAR_LENGTH_MM, printable.getMinY(), y + AIR_MM),
                new Envelope(printable.getMinX(), x + AIR_MM, printable.getMinY(), y + BAR_LENGTH_MM),
                new Envelope(x, x + SQUARE_MM + AIR_MM, y, y + SQUARE_MM + AIR_MM))) {
            free = OverlayNGRobust.overlay(free, JTS.toGeometry(used), OverlayNG.DIFFERENCE);
        }
        return free;
    }

    /** The rectangles that a part of a large piece may be shown in: beside the square, and above it. */
    public List<Envelope> windows() {
        Point corner = squareCorner();
        double left = corner.x() + AIR_MM;
        double bottom = corner.y() + AIR_MM;
        return List.of(
                new Envelope(left + SQUARE_MM, printable.getMaxX(), bottom, printable.getMaxY()),
                new Envelope(left, printable.getMaxX(), bottom + SQUARE_MM, printable.getMaxY()));
    }
}
