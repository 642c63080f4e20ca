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
 * The layout of an empty page: a check square in the lower left corner, a ruler along the lower margin and one along
 * the left margin; the rest is free for pieces. Coordinates are in mm of the paper from its lower left corner.
 *
 * <p>The margin is kept on the paper and on the page of the file, which differ for a print with scale correction.
 *
 * @param widthMm width of the paper
 * @param heightMm height of the paper
 * @param printable area inside the margins
 */
public record PageFrame(double widthMm, double heightMm, Envelope printable) {
    /** Most printers can print up to this distance from the edge of the paper. From memory. */
    static final double MARGIN_MM = 9;

    /** Side of the check square. */
    public static final double SQUARE_MM = 50;

    /** Width of a ruler with its ticks and numbers. */
    public static final double BAR_DEPTH_MM = 10;

    /** Length of a ruler: 150 mm or 6 in, and the name of the unit. */
    static final double BAR_LENGTH_MM = 160;

    /** Clearance to pieces. Chosen by eye. */
    private static final double CLEARANCE_MM = 1.5;

    private static final GeometryFactory JTS = new GeometryFactory();

    /** The layout of a page for a printer's scale. */
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

    /** The lower left corner of the check square, where both rulers begin. */
    public Point squareCorner() {
        return new Point(printable.getMinX() + BAR_DEPTH_MM, printable.getMinY() + BAR_DEPTH_MM);
    }

    /** The area that is free for pieces. */
    public Geometry free() {
        Point corner = squareCorner();
        double x = corner.x();
        double y = corner.y();
        Geometry free = JTS.toGeometry(printable);
        for (Envelope used : List.of(
                new Envelope(printable.getMinX(), x + BAR_LENGTH_MM, printable.getMinY(), y + CLEARANCE_MM),
                new Envelope(printable.getMinX(), x + CLEARANCE_MM, printable.getMinY(), y + BAR_LENGTH_MM),
                new Envelope(x, x + SQUARE_MM + CLEARANCE_MM, y, y + SQUARE_MM + CLEARANCE_MM))) {
            free = OverlayNGRobust.overlay(free, JTS.toGeometry(used), OverlayNG.DIFFERENCE);
        }
        return free;
    }

    /** The rectangles for a part of a large piece: the one beside the check square and the one above it. */
    public List<Envelope> windows() {
        Point corner = squareCorner();
        double left = corner.x() + CLEARANCE_MM;
        double bottom = corner.y() + CLEARANCE_MM;
        return List.of(
                new Envelope(left + SQUARE_MM, printable.getMaxX(), bottom, printable.getMaxY()),
                new Envelope(left, printable.getMaxX(), bottom + SQUARE_MM, printable.getMaxY()));
    }
}
