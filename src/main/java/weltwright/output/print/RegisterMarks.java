package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.output.ShapePacking;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;

/**
 * Marks in the overlap of two pages: laid over each other they coincide, and the piece is whole. A cross in a circle
 * near either end of the overlap, and a broken line down its middle to cut along.
 */
final class RegisterMarks {
    private static final double RADIUS_MM = 2.5;
    private static final double ARM_MM = 4;
    /** From the middle of the seam to its end. */
    private static final List<Double> PLACES = List.of(0.7, 0.6, 0.8, 0.5, 0.9, 0.4);

    private static final LineStroke STROKE = LineStroke.unbroken(0.15, Color.BLACK);
    private static final LineStroke SEAM = LineStroke.dashed(0.1, Color.GRAY, 0.5, 1.5);

    private RegisterMarks() {}

    /** The part of a window that its neighbour on this side shows too. */
    static Envelope strip(Envelope window, Tile.Side side) {
        double overlap = TileGrid.OVERLAP_MM;
        return switch (side) {
            case LEFT -> new Envelope(window.getMinX(), window.getMinX() + overlap, window.getMinY(), window.getMaxY());
            case RIGHT ->
                new Envelope(window.getMaxX() - overlap, window.getMaxX(), window.getMinY(), window.getMaxY());
            case LOWER ->
                new Envelope(window.getMinX(), window.getMaxX(), window.getMinY(), window.getMinY() + overlap);
            case UPPER ->
                new Envelope(window.getMinX(), window.getMaxX(), window.getMaxY() - overlap, window.getMaxY());
        };
    }

    static void draw(PdfCanvas canvas, PlannedPage.PlacedTile placed) throws IOException {
        Geometry lines = ShapePacking.moved(placed.drawing().lines(), placed.placement());
        for (Tile.Side side : placed.tile().joins()) {
            Envelope strip = strip(placed.window(), side);
            boolean upright = strip.getHeight() > strip.getWidth();
            Point centre = Point.of(strip.centre());
            Point half = upright ? new Point(0, strip.getHeight() / 2) : new Point(strip.getWidth() / 2, 0);
            canvas.draw(SEAM, centre.minus(half), centre.plus(half));
            for (Point towardsEnd : List.of(half.times(-1), half)) {
                Point at = place(centre, towardsEnd, lines);
                canvas.circle(STROKE, at, RADIUS_MM);
                canvas.draw(STROKE, at.minus(new Point(ARM_MM, 0)), at.plus(new Point(ARM_MM, 0)));
                canvas.draw(STROKE, at.minus(new Point(0, ARM_MM)), at.plus(new Point(0, ARM_MM)));
            }
        }
    }

    /**
     * Where along a half of the seam its mark stands: the first place that is clear of the piece. What is near a seam
     * is on both pages, so that both come to the same place.
     */
    private static Point place(Point centre, Point towardsEnd, Geometry lines) {
        for (double fraction : PLACES) {
            Point at = centre.plus(towardsEnd.times(fraction));
            if (!lines.isWithinDistance(lines.getFactory().createPoint(at.coordinate()), ARM_MM + 0.5)) {
                return at;
            }
        }
        return centre.plus(towardsEnd.times(PLACES.get(0)));
    }
}
