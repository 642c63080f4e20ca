package weltwright.ground.sheet;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;

/** The reference sheet as a ground to be rendered: its frame, black on white, on a grey table. */
public record RenderedSheet(ReferenceSheet sheet) implements RenderedGround.Paint {
    private static final double WHITE = 215;
    private static final double BLACK = 25;
    private static final double TABLE = 110;

    private static final Map<ReferenceSheet, boolean[][][][]> MARKERS = new ConcurrentHashMap<>();

    /** Which cells of the marker in a square are black, by row and column of the square. */
    private static boolean[][][][] markers(ReferenceSheet sheet) {
        boolean[][][][] cells = new boolean[sheet.squaresDown()][sheet.squaresAcross()][][];
        for (ReferenceSheet.Marker marker : sheet.markers()) {
            cells[marker.row()][marker.column()] = ReferenceSheet.blackCells(marker);
        }
        return cells;
    }

    @Override
    public double light(Point at, double footprintMm) {
        if (Math.abs(at.x()) > sheet.pageWidthMm() / 2 || Math.abs(at.y()) > sheet.pageHeightMm() / 2) {
            return TABLE;
        }
        double right = (at.x() + sheet.boardWidthMm() / 2) / sheet.squareMm();
        double down = (sheet.boardHeightMm() / 2 - at.y()) / sheet.squareMm();
        int column = (int) Math.floor(right);
        int row = (int) Math.floor(down);
        boolean onBoard = column >= 0 && row >= 0 && column < sheet.squaresAcross() && row < sheet.squaresDown();
        if (!onBoard || !sheet.isPrinted(column, row)) {
            return WHITE;
        }
        if (sheet.isBlack(column, row)) {
            return BLACK;
        }
        double rim = (1 - sheet.markerMm() / sheet.squareMm()) / 2;
        double cell = sheet.markerMm() / sheet.squareMm() / ReferenceSheet.MARKER_CELLS;
        int across = (int) Math.floor((right - column - rim) / cell);
        int below = (int) Math.floor((down - row - rim) / cell);
        boolean inside = across >= 0
                && below >= 0
                && across < ReferenceSheet.MARKER_CELLS
                && below < ReferenceSheet.MARKER_CELLS;
        return inside && MARKERS.computeIfAbsent(sheet, RenderedSheet::markers)[row][column][below][across]
                ? BLACK
                : WHITE;
    }
}
