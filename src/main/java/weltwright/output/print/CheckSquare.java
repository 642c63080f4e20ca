package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.output.PageFrame;
import weltwright.output.PageHeading;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.units.PrintScale;

/**
 * The square to measure in the corner of each page, and in it, where it takes no room from the pieces, how to print, on
 * the first page what to do about a square that is not true, and what page this is: the job, the number, the pieces,
 * and for a part of a large piece which part, with a map of all.
 */
final class CheckSquare {
    private static final Messages TEXTS = Messages.of(CheckSquare.class);

    private static final double SIZE_MM = 2.6;
    private static final double LARGE_MM = 3.4;
    private static final double INSET_MM = 2;
    private static final double CELL_MM = 6;
    private static final LineStroke LINE = LineStroke.unbroken(0.25, Color.BLACK);
    private static final LineStroke MAP = LineStroke.unbroken(0.12, Color.BLACK);
    private static final Color HERE = new Color(0xD0D0D0);

    private final PdfCanvas canvas;
    private final Point corner;
    /** The upper edge of the next line of text. */
    private double y;

    CheckSquare(PdfCanvas canvas, PageFrame frame) {
        this.canvas = canvas;
        this.corner = frame.squareCorner();
        this.y = corner.y() + PageFrame.SQUARE_MM - INSET_MM;
    }

    void draw(PlannedPage page, int number, int of, PageHeading heading, PrintScale scale) throws IOException {
        canvas.rectangle(LINE, corner, corner.plus(new Point(PageFrame.SQUARE_MM, PageFrame.SQUARE_MM)));
        write(TEXTS.text("check-square.50-mm-each-way"), LARGE_MM, 1);
        if (number == 1) {
            write(TEXTS.text("check-square.print-at-100-not-fit"), SIZE_MM, 5);
        } else {
            write(TEXTS.text("check-square.print-at-100-actual-size"), SIZE_MM, 2);
        }
        if (!scale.equals(PrintScale.TRUE)) {
            write(
                    TEXTS.text("check-square.corrected-for-a-printer-that", 100 * scale.x(), 100 * scale.y()),
                    SIZE_MM,
                    2);
        }
        y -= 1;
        write(heading.line(), SIZE_MM, 2);
        write(TEXTS.text("check-square.page-of", number, of), SIZE_MM, 1);
        List<String> pieces = new ArrayList<>();
        page.pieces().forEach(whole -> pieces.add(whole.drawing().caption()));
        if (!pieces.isEmpty()) {
            write(String.join(", ", pieces), SIZE_MM, page.tile().isPresent() ? 1 : 4);
        }
        if (page.tile().isPresent()) {
            PlannedPage.PlacedTile placed = page.tile().get();
            y -= 1;
            write(
                    TEXTS.text(
                            "check-square.page",
                            placed.drawing().caption(),
                            placed.tile().cell().name()),
                    LARGE_MM,
                    1);
            drawMap(placed.tile());
        }
    }

    private void write(String text, double size, int mostLines) throws IOException {
        double width = PageFrame.SQUARE_MM - 2 * INSET_MM;
        List<String> lines = canvas.typeface().wrap(text, width, size);
        for (int i = 0; i < Math.min(mostLines, lines.size()); i++) {
            boolean leftOut = i == mostLines - 1 && lines.size() > mostLines;
            String line =
                    leftOut ? canvas.typeface().cut(lines.get(i) + " " + lines.get(i + 1), width, size) : lines.get(i);
            canvas.write(line, new Point(corner.x() + INSET_MM, y - size * PdfTypeface.CAPITAL), size);
            y -= size * PdfTypeface.LINE;
        }
    }

    /** All parts side by side, this one grey; beside them, what joins where. */
    private void drawMap(Tile tile) throws IOException {
        double room = Math.min(y - corner.y() - INSET_MM, PageFrame.SQUARE_MM - 2 * INSET_MM);
        double cellMm = Math.min(CELL_MM, room / Math.max(tile.rows(), tile.columns()));
        Point upperLeft = new Point(corner.x() + INSET_MM, y - 0.5);
        for (Tile.Cell cell : tile.all()) {
            Point lowerLeft = upperLeft.plus(new Point(cell.column() * cellMm, -(cell.row() + 1) * cellMm));
            Point upperRight = lowerLeft.plus(new Point(cellMm, cellMm));
            if (cell.equals(tile.cell())) {
                canvas.fill(HERE, List.of(PdfCanvas.box(lowerLeft, upperRight)));
            }
            canvas.rectangle(MAP, lowerLeft, upperRight);
            double size = cellMm * 0.42;
            Point name = lowerLeft
                    .towards(upperRight, 0.5)
                    .minus(new Point(canvas.typeface().widthMm(cell.name(), size) / 2, size * PdfTypeface.CAPITAL / 2));
            canvas.write(cell.name(), name, size);
        }
        double left = upperLeft.x() + tile.columns() * cellMm + 2;
        double leading = SIZE_MM * PdfTypeface.LINE;
        double base = upperLeft.y() - SIZE_MM * PdfTypeface.CAPITAL;
        for (Tile.Side side : tile.joins()) {
            String text = side.words() + ": " + tile.cell().neighbour(side).name();
            canvas.write(text, new Point(left, base), SIZE_MM);
            base -= leading;
        }
    }
}
