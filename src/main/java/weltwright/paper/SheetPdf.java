package weltwright.paper;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.ReferenceSheet;
import weltwright.ground.ReferenceSheet.Area;
import weltwright.ground.ReferenceSheet.Marker;
import weltwright.measure.PrintScale;

/**
 * The reference sheet as a PDF, true to size: the frame, thin pale lines inside it, a bar to measure in each direction,
 * and how to photograph.
 *
 * <p>Words and bars stand in the outermost row and column of the working area, out of the way of the knife, in the same
 * pale blue as the lines: what looks for the knife takes them for ruled ground.
 */
public final class SheetPdf {
    private static final Color LINES = new Color(0xA9C6DE);
    private static final Color WORDS = new Color(0x6F9CC4);
    private static final double LINE_MM = 0.25;
    /** A hairline: a measure from line to line must not depend on which side of the line is meant. */
    private static final double TICK_MM = 0.1;

    private static final List<String> HOW_TO = List.of(
            "Photograph from straight above, from as far away as fits: zoom in rather than go near.",
            "Flat, even light, no flash. Lay the knife inside the frame, on this plain side.",
            "Print at actual size (100 %), then measure both bars and tell the program.");

    private SheetPdf() {}

    /** Writes the PDF. Throws {@link weltwright.trouble.Trouble} where the file cannot be written. */
    public static void write(ReferenceSheet sheet, Path file) {
        TruePdf.write(bytes(sheet), file);
    }

    /** The sheet for a printer, at actual size. */
    public static PrintPages pages(ReferenceSheet sheet) {
        return new PrintPages(bytes(sheet));
    }

    private static byte[] bytes(ReferenceSheet sheet) {
        return TruePdf.bytes("Reference sheet, " + sheet.pageName(), (document, lettering) -> {
            try (Ink ink = Ink.onNewPage(
                    document, lettering, sheet.pageWidthMm(), sheet.pageHeightMm(), PrintScale.TRUE)) {
                new Drawing(sheet, ink, lettering).draw();
            }
        });
    }

    /** One sheet on one page. Places are thought of in the sheet's frame and drawn in the page's. */
    private record Drawing(ReferenceSheet sheet, Ink ink, Lettering lettering) {

        void draw() throws IOException {
            drawFrame();
            drawLines();
            drawBarAcross();
            drawBarUp();
            writeHowTo();
        }

        private void drawFrame() throws IOException {
            List<Polyline> squares = new ArrayList<>();
            for (int row = 0; row < sheet.squaresDown(); row++) {
                for (int column = 0; column < sheet.squaresAcross(); column++) {
                    if (sheet.isPrinted(column, row) && sheet.isBlack(column, row)) {
                        squares.add(box(sheet.gridPoint(column, row + 1), sheet.gridPoint(column + 1, row)));
                    }
                }
            }
            ink.fill(Color.BLACK, squares);
            for (Marker marker : sheet.markers()) {
                ink.fill(Color.BLACK, blackCells(marker));
            }
        }

        private List<Polyline> blackCells(Marker marker) {
            boolean[][] black = ReferenceSheet.blackCells(marker);
            double cell = sheet.markerMm() / ReferenceSheet.MARKER_CELLS;
            Point topLeft = sheet.markerCorners(marker).get(0);
            List<Polyline> cells = new ArrayList<>();
            for (int row = 0; row < black.length; row++) {
                for (int column = 0; column < black.length; column++) {
                    if (black[row][column]) {
                        Point corner = topLeft.plus(new Point(column * cell, -row * cell));
                        cells.add(box(corner.plus(new Point(0, -cell)), corner.plus(new Point(cell, 0))));
                    }
                }
            }
            return cells;
        }

        /** One line to each square, but for where words and bars stand. */
        private void drawLines() throws IOException {
            int frame = ReferenceSheet.FRAME_SQUARES;
            int right = sheet.squaresAcross() - frame;
            int lower = sheet.squaresDown() - frame;
            for (int column = frame + 1; column < right; column++) {
                drawLine(sheet.gridPoint(column, lower), sheet.gridPoint(column, frame));
            }
            for (int row = frame + 1; row < lower; row++) {
                drawLine(sheet.gridPoint(frame, row), sheet.gridPoint(right, row));
            }
        }

        private void drawLine(Point from, Point to) throws IOException {
            Geometry line = Polyline.open(List.of(from, to)).lineString();
            for (Area area : List.of(sheet.words(), sheet.barAcross(), sheet.barUp())) {
                Polygon box = Ink.box(area.lowerLeft(), area.upperRight()).polygon();
                // A line along the rim of the words keeps them apart from the rest.
                if (box.getBoundary().intersection(line).getLength() == 0) {
                    line = line.difference(box);
                }
            }
            Coordinate[] ends = line.getCoordinates();
            ink.draw(Pen.unbroken(LINE_MM, LINES), onPage(Point.of(ends[0])), onPage(Point.of(ends[ends.length - 1])));
        }

        private void drawBarAcross() throws IOException {
            double half = ReferenceSheet.BAR_MM / 2;
            double y = sheet.barAcross().lowerLeft().y() + sheet.squareMm() * 0.3;
            drawBar(new Point(-half, y), new Point(half, y));
        }

        private void drawBarUp() throws IOException {
            double half = ReferenceSheet.BAR_MM / 2;
            double x = sheet.barUp().lowerLeft().x() + sheet.squareMm() * 0.7;
            drawBar(new Point(x, -half), new Point(x, half));
        }

        /** A bar with its name on its left side as seen along it. */
        private void drawBar(Point from, Point to) throws IOException {
            Point along = to.minus(from).unit();
            Point tick = along.left().times(2);
            ink.draw(Pen.unbroken(LINE_MM, WORDS), onPage(from), onPage(to));
            for (Point end : List.of(from, to)) {
                ink.draw(Pen.unbroken(TICK_MM, WORDS), onPage(end.minus(tick)), onPage(end.plus(tick)));
            }
            double size = 3;
            String name = "%.0f mm from end line to end line".formatted(ReferenceSheet.BAR_MM);
            Point start = from.towards(to, 0.5)
                    .minus(along.times(lettering.widthMm(name, size) / 2))
                    .plus(along.left().times(1.8));
            ink.write(name, onPage(start), Math.atan2(along.y(), along.x()), size, WORDS);
        }

        /** As large as three lines allow in the row of squares that they stand in. */
        private void writeHowTo() throws IOException {
            Area room = sheet.words();
            double margin = 1.5;
            Point upperLeft = new Point(room.lowerLeft().x() + margin, room.upperRight().y() - margin);
            double width = room.upperRight().x() - room.lowerLeft().x() - 2 * margin;
            double leading = (sheet.squareMm() - 2 * margin) / HOW_TO.size();
            double widest = HOW_TO.stream()
                    .mapToDouble(line -> lettering.widthMm(line, 1))
                    .max()
                    .orElseThrow();
            double size = Math.min(width / widest, leading / Lettering.LINE);
            for (int i = 0; i < HOW_TO.size(); i++) {
                double base = upperLeft.y() - (i + 0.5) * leading - size * Lettering.CAPITAL / 2;
                ink.write(HOW_TO.get(i), onPage(new Point(upperLeft.x(), base)), 0, size, WORDS);
            }
        }

        private Polyline box(Point lowerLeft, Point upperRight) {
            return Ink.box(onPage(lowerLeft), onPage(upperRight));
        }

        private Point onPage(Point onSheet) {
            return onSheet.plus(new Point(sheet.pageWidthMm() / 2, sheet.pageHeightMm() / 2));
        }
    }
}
