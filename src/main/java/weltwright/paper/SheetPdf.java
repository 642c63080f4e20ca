package weltwright.paper;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.ReferenceSheet;
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
            int inside = ReferenceSheet.FRAME_SQUARES;
            Pen pen = Pen.unbroken(LINE_MM, LINES);
            double left = insideArea().getMinX();
            double right = insideArea().getMaxX();
            for (int column = inside + 1; column < sheet.squaresAcross() - inside; column++) {
                double x = sheet.gridPoint(column, 0).x();
                boolean meetsBar = Math.abs(x) < ReferenceSheet.BAR_MM / 2 + sheet.squareMm() / 4;
                ink.draw(
                        pen,
                        onPage(new Point(x, wordsRow().getMinY())),
                        onPage(new Point(x, meetsBar ? barRow().getMaxY() : barRow().getMinY())));
            }
            for (int row = inside + 1; row < sheet.squaresDown() - inside; row++) {
                double y = sheet.gridPoint(0, row).y();
                boolean meetsBar = Math.abs(y) < ReferenceSheet.BAR_MM / 2 + sheet.squareMm() / 4;
                ink.draw(
                        pen,
                        onPage(new Point(meetsBar ? left + sheet.squareMm() : left, y)),
                        onPage(new Point(right, y)));
            }
        }

        private void drawBarAcross() throws IOException {
            double half = ReferenceSheet.BAR_MM / 2;
            double y = barRow().getMinY() + sheet.squareMm() * 0.3;
            drawBar(new Point(-half, y), new Point(half, y));
        }

        private void drawBarUp() throws IOException {
            double half = ReferenceSheet.BAR_MM / 2;
            double x = insideArea().getMinX() + sheet.squareMm() * 0.7;
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
            Envelope room = wordsRow();
            double margin = 1.5;
            double widest = HOW_TO.stream()
                    .mapToDouble(line -> lettering.widthMm(line, 1))
                    .max()
                    .orElseThrow();
            double size = Math.min(
                    (room.getWidth() - 2 * margin) / widest,
                    (room.getHeight() - 2 * margin) / (Lettering.LINE * HOW_TO.size()));
            double leading = (room.getHeight() - 2 * margin) / HOW_TO.size();
            for (int i = 0; i < HOW_TO.size(); i++) {
                double middle = room.getMaxY() - margin - (i + 0.5) * leading;
                Point from = new Point(room.getMinX() + margin, middle - size * Lettering.CAPITAL / 2);
                ink.write(HOW_TO.get(i), onPage(from), 0, size, WORDS);
            }
        }

        /** The working area inside the frame. */
        private Envelope insideArea() {
            int inside = ReferenceSheet.FRAME_SQUARES;
            return new Envelope(
                    sheet.gridPoint(inside, inside).coordinate(),
                    sheet.gridPoint(sheet.squaresAcross() - inside, sheet.squaresDown() - inside).coordinate());
        }

        /** The uppermost row of squares of the working area. */
        private Envelope wordsRow() {
            Envelope area = insideArea();
            return new Envelope(area.getMinX(), area.getMaxX(), area.getMaxY() - sheet.squareMm(), area.getMaxY());
        }

        /** The lowest row of squares of the working area. */
        private Envelope barRow() {
            Envelope area = insideArea();
            return new Envelope(area.getMinX(), area.getMaxX(), area.getMinY(), area.getMinY() + sheet.squareMm());
        }

        private Polyline box(Point lowerLeft, Point upperRight) {
            return Ink.box(onPage(lowerLeft), onPage(upperRight));
        }

        private Point onPage(Point onSheet) {
            return onSheet.plus(new Point(sheet.pageWidthMm() / 2, sheet.pageHeightMm() / 2));
        }
    }
}
