package weltwright.output.print;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleFunction;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.output.ShapePacking;
import weltwright.output.pdf.Label;

/**
 * A large piece seen through windows of one size, side by side and one below the other, each overlapping its neighbours
 * by {@link #OVERLAP_MM}. Every point of the piece shows in a window, and every seam's surroundings in two.
 *
 * @param piece what is shown
 * @param window where a part shows on its page
 * @param directionRad that the piece is turned to
 * @param upperLeft the upper left corner of the first window, in the turned piece's frame
 * @param cells those windows that have something in them
 */
record TileGrid(PrintedDrawing piece, Envelope window, double directionRad, Point upperLeft, Set<Tile.Cell> cells) {
    static final double OVERLAP_MM = 10;

    /** Seams that run along a line of the piece are hard to join: this near to one counts as along it. */
    private static final double ALONG_MM = 3;

    private static final List<Double> FRACTIONS_OF_SLACK = List.of(0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95);
    private static final GeometryFactory JTS = new GeometryFactory();

    /** The grid over a piece turned so, with as few windows as cover it. */
    static TileGrid over(PrintedDrawing piece, double directionRad, Envelope window) {
        RigidMotion turn = new RigidMotion(directionRad, new Point(0, 0));
        Geometry turned = ShapePacking.moved(piece.footprint(), turn);
        Geometry lines = ShapePacking.moved(piece.lines(), turn);
        Envelope box = turned.getEnvelopeInternal();
        double stepX = window.getWidth() - OVERLAP_MM;
        double stepY = window.getHeight() - OVERLAP_MM;
        int columns = (int) Math.max(1, Math.ceil((box.getWidth() - OVERLAP_MM) / stepX));
        int rows = (int) Math.max(1, Math.ceil((box.getHeight() - OVERLAP_MM) / stepY));
        double slackX = columns * stepX + OVERLAP_MM - box.getWidth();
        double slackY = rows * stepY + OVERLAP_MM - box.getHeight();

        double left = box.getMinX()
                - slackX
                        * bestFraction(
                                lines,
                                fraction -> seams(columns, box.getMinX() - slackX * fraction, stepX).stream()
                                        .map(x ->
                                                new Envelope(x - ALONG_MM, x + ALONG_MM, box.getMinY(), box.getMaxY()))
                                        .toList());
        double bottom = box.getMinY()
                - slackY
                        * bestFraction(
                                lines,
                                fraction -> seams(rows, box.getMinY() - slackY * fraction, stepY).stream()
                                        .map(y ->
                                                new Envelope(box.getMinX(), box.getMaxX(), y - ALONG_MM, y + ALONG_MM))
                                        .toList());
        Point upperLeft = new Point(left, bottom + rows * stepY + OVERLAP_MM);

        Set<Tile.Cell> cells = new LinkedHashSet<>();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                // What lies in the overlap with the next window is that one's to show.
                double x = upperLeft.x() + column * stepX;
                double y = upperLeft.y() - row * stepY;
                Envelope own = new Envelope(
                        x,
                        x + stepX + (column == columns - 1 ? OVERLAP_MM : 0),
                        y - stepY - (row == rows - 1 ? OVERLAP_MM : 0),
                        y);
                if (turned.intersects(JTS.toGeometry(own))) {
                    cells.add(new Tile.Cell(row, column));
                }
            }
        }
        return new TileGrid(piece, window, directionRad, upperLeft, cells);
    }

    /** Returns the part of the piece that a cell's page shows. */
    PlannedPage.PlacedTile place(Tile.Cell cell) {
        RigidMotion placement = placement(cell);
        List<Label> labels = new ArrayList<>();
        for (Label label : piece.labels()) {
            // Labels go where they show whole; those that show whole nowhere go everywhere, and join with the pages.
            if (isWhole(label.placed(placement))
                    || cells.stream().noneMatch(other -> isWhole(label.placed(placement(other))))) {
                labels.add(label.placed(placement));
            }
        }
        Tile tile = new Tile(piece.name(), cell, cells);
        return new PlannedPage.PlacedTile(piece, List.copyOf(labels), placement, window, tile);
    }

    private boolean isWhole(Label label) {
        return window.contains(label.box().getEnvelopeInternal());
    }

    /** Returns the motion that puts the part in a cell into the window. */
    private RigidMotion placement(Tile.Cell cell) {
        Point corner = upperLeft.plus(new Point(
                cell.column() * (window.getWidth() - OVERLAP_MM), -cell.row() * (window.getHeight() - OVERLAP_MM)));
        return new RigidMotion(directionRad, new Point(window.getMinX(), window.getMaxY()).minus(corner));
    }

    /** Where the middles of the overlaps lie along one axis. */
    private static List<Double> seams(int windows, double first, double step) {
        List<Double> seams = new ArrayList<>();
        for (int i = 1; i < windows; i++) {
            seams.add(first + i * step + OVERLAP_MM / 2);
        }
        return seams;
    }

    /** How much of the room to spare to leave before the piece, so that the least of its lines run along seams. */
    private static double bestFraction(Geometry lines, DoubleFunction<List<Envelope>> strips) {
        double best = FRACTIONS_OF_SLACK.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (double fraction : FRACTIONS_OF_SLACK) {
            double length = 0;
            for (Envelope strip : strips.apply(fraction)) {
                length += OverlayNGRobust.overlay(lines, JTS.toGeometry(strip), OverlayNG.INTERSECTION)
                        .getLength();
            }
            if (length < least - 1e-6) {
                best = fraction;
                least = length;
            }
        }
        return best;
    }
}
