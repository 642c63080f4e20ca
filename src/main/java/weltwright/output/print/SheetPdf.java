package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.ground.sheet.ReferenceSheet.Marker;
import weltwright.io.FileKind;
import weltwright.message.Messages;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.output.pdf.PrintPages;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.units.PrintScale;

/**
 * The reference sheet as a PDF, true to size: the frame, thin pale lines inside it, a bar to measure in each direction,
 * and how to photograph.
 *
 * <p>No pale line is interrupted, for a line that is missing in a photo tells that the knife hides it. So the words
 * stand in the wider margins outside the frame, and each bar, in the outermost squares of the working area, out of the
 * way of the knife, has its length named between two lines.
 */
public final class SheetPdf {
    private static final Messages TEXTS = Messages.of(SheetPdf.class);

    /** What may be replaced by such a file. */
    public static final FileKind KIND = TrueSizePdf.KIND;

    private static final Color LINES = new Color(0xA9C6DE);
    private static final Color TEXT = new Color(0x6F9CC4);
    private static final double LINE_MM = 0.25;
    /** A hairline: a measure from line to line must not depend on which side of the line is meant. */
    private static final double TICK_MM = 0.1;

    private static final String HOW_TO_PHOTOGRAPH = TEXTS.text("sheet-pdf.photograph-from-straight-above-from");
    private static final String HOW_TO_PRINT = TEXTS.text("sheet-pdf.print-at-actual-size-100");
    private static final double LARGEST_TEXT_MM = 2.6;
    private static final double WORDS_OFF_FRAME_MM = 2;
    private static final double BAR_NAME_MM = 2.6;
    /** How far into its squares, from their edge that is the first to its right, a bar stands; in squares. */
    private static final double BAR_IN = 0.2;

    private SheetPdf() {}

    /** Writes the PDF. Throws {@link weltwright.error.UserFacingException} where the file cannot be written. */
    public static void write(ReferenceSheet sheet, Path file) {
        TrueSizePdf.write(bytes(sheet), file);
    }

    /** The sheet for a printer, at actual size. */
    public static PrintPages pages(ReferenceSheet sheet) {
        return new PrintPages(bytes(sheet));
    }

    private static byte[] bytes(ReferenceSheet sheet) {
        return TrueSizePdf.bytes(
                TEXTS.text("sheet-pdf.reference-sheet", sheet.pageName()), Optional.empty(), (document, typeface) -> {
                    try (PdfCanvas canvas = PdfCanvas.onNewPage(
                            document, typeface, sheet.pageWidthMm(), sheet.pageHeightMm(), PrintScale.TRUE)) {
                        new Drawing(sheet, canvas).draw();
                    }
                });
    }

    /** One sheet on one page. Places are thought of in the sheet's frame and drawn in the page's. */
    private record Drawing(ReferenceSheet sheet, PdfCanvas canvas) {

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
            canvas.fill(Color.BLACK, squares);
            for (Marker marker : sheet.markers()) {
                canvas.fill(Color.BLACK, blackCells(marker));
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

        /** One line to each square. */
        private void drawLines() throws IOException {
            int frame = ReferenceSheet.FRAME_SQUARES;
            int right = sheet.squaresAcross() - frame;
            int lower = sheet.squaresDown() - frame;
            LineStroke stroke = LineStroke.unbroken(LINE_MM, LINES);
            for (int column = frame + 1; column < right; column++) {
                canvas.draw(stroke, onPage(sheet.gridPoint(column, lower)), onPage(sheet.gridPoint(column, frame)));
            }
            for (int row = frame + 1; row < lower; row++) {
                canvas.draw(stroke, onPage(sheet.gridPoint(frame, row)), onPage(sheet.gridPoint(right, row)));
            }
        }

        /** In the lowest squares of the working area. */
        private void drawBarAcross() throws IOException {
            double y = sheet.gridPoint(0, sheet.squaresDown() - ReferenceSheet.FRAME_SQUARES)
                    .y();
            drawBar(new Point(0, y + BAR_IN * sheet.squareMm()), new Point(1, 0), sheet.squaresAcross());
        }

        /** In the squares furthest to the left. */
        private void drawBarUp() throws IOException {
            double x = sheet.gridPoint(ReferenceSheet.FRAME_SQUARES + 1, 0).x();
            drawBar(new Point(x - BAR_IN * sheet.squareMm(), 0), new Point(0, 1), sheet.squaresDown());
        }

        /**
         * A bar, and its length on its left side as seen along it.
         *
         * @param squares of the board along it: where they are an even number, its middle is on a pale line, else half
         *     a square from one
         */
        private void drawBar(Point middle, Point along, int squares) throws IOException {
            Point half = along.times(ReferenceSheet.BAR_MM / 2);
            canvas.draw(LineStroke.unbroken(LINE_MM, TEXT), onPage(middle.minus(half)), onPage(middle.plus(half)));
            Point tick = along.left().times(1.6);
            for (Point end : List.of(middle.minus(half), middle.plus(half))) {
                canvas.draw(LineStroke.unbroken(TICK_MM, TEXT), onPage(end.minus(tick)), onPage(end.plus(tick)));
            }
            String name = TEXTS.text("sheet-pdf.mm", ReferenceSheet.BAR_MM);
            // Off the page's middle, where knives lie.
            double aside = sheet.squareMm() * (squares % 2 == 0 ? 2.5 : 2);
            write(name, middle.minus(along.times(aside)).plus(along.left().times(2.5)), along, BAR_NAME_MM);
        }

        /** Above and below the frame, or on its left and right, wherever the margins are wider. */
        private void writeHowTo() throws IOException {
            double aside = sheet.pageWidthMm() - sheet.boardWidthMm();
            double above = sheet.pageHeightMm() - sheet.boardHeightMm();
            Point along = above > aside ? new Point(1, 0) : new Point(0, 1);
            double toFrame = (above > aside ? sheet.boardHeightMm() : sheet.boardWidthMm()) / 2;
            double length = above > aside ? sheet.boardWidthMm() : sheet.boardHeightMm();
            double size = Math.min(LARGEST_TEXT_MM, length / canvas.typeface().widthMm(HOW_TO_PHOTOGRAPH, 1));
            Point outwards = along.left();
            // As far from the frame on either side: letters stand on their base line, which is below the upper words
            // and above the lower ones.
            double height = size * PdfTypeface.CAPITAL;
            write(HOW_TO_PHOTOGRAPH, outwards.times(toFrame + WORDS_OFF_FRAME_MM), along, size);
            write(HOW_TO_PRINT, outwards.times(-toFrame - WORDS_OFF_FRAME_MM - height), along, size);
        }

        /** @param middle of the words' base line */
        private void write(String text, Point middle, Point along, double size) throws IOException {
            Point from = middle.minus(along.times(canvas.typeface().widthMm(text, size) / 2));
            canvas.write(text, onPage(from), Math.atan2(along.y(), along.x()), size, TEXT);
        }

        private Polyline box(Point lowerLeft, Point upperRight) {
            return PdfCanvas.box(onPage(lowerLeft), onPage(upperRight));
        }

        private Point onPage(Point onSheet) {
            return onSheet.plus(new Point(sheet.pageWidthMm() / 2, sheet.pageHeightMm() / 2));
        }
    }
}
