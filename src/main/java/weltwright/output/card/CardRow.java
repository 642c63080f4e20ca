package weltwright.output.card;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PageBlock;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;

/**
 * A row of a table on the bench card: text in columns, a rule below.
 *
 * @param columns from left to right
 * @param cells the lines of text in each, printable
 * @param kind how it is set
 * @param note lines in small letters under the text of one column
 * @param noteColumn which column that is
 */
record CardRow(List<Column> columns, List<List<String>> cells, Kind kind, List<String> note, int noteColumn)
        implements PageBlock {
    static final double SIZE_MM = 3;
    private static final double HEAD_MM = 2.5;
    private static final double PART_MM = 3.4;
    private static final double PADDING_MM = 1.1;
    /** From the text of one column to that of the next. */
    private static final double GAP_MM = 3;

    private static final LineStroke RULE = LineStroke.unbroken(0.1, Color.GRAY);
    private static final LineStroke HEAD_RULE = LineStroke.unbroken(0.3, Color.BLACK);
    private static final Color GREY = new Color(0x505050);

    /** How a row is set. */
    enum Kind {
        /** The names of the columns. */
        HEAD,
        PLAIN,
        /** The title of the rows that follow. */
        PART,
        /** A line of a longer text: close to the next, with no rule between. */
        PROSE,
        /** With a bar beside it, that it is not overlooked. */
        CALLED_OUT
    }

    /**
     * A column.
     *
     * @param name over it
     * @param widthMm of it, the gap to the next included
     * @param numeric whether it holds numbers, which stand to the right
     */
    record Column(String name, double widthMm, boolean numeric) {
        static Column text(String name, double widthMm) {
            return new Column(name, widthMm, false);
        }

        static Column numeric(String name, double widthMm) {
            return new Column(name, widthMm, true);
        }
    }

    static CardRow head(PdfTypeface typeface, List<Column> columns) {
        return of(typeface, columns, columns.stream().map(Column::name).toList(), Kind.HEAD);
    }

    static CardRow of(PdfTypeface typeface, List<Column> columns, List<String> texts, Kind kind) {
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            cells.add(typeface.wrap(texts.get(i), roomMm(columns, i), size(kind)));
        }
        return new CardRow(columns, List.copyOf(cells), kind, List.of(), 0);
    }

    /** Returns the row with a note in small letters under the text of a column. */
    CardRow withNote(PdfTypeface typeface, String text, int column) {
        return text.isBlank()
                ? this
                : new CardRow(columns, cells, kind, typeface.wrap(text, roomMm(columns, column), HEAD_MM), column);
    }

    private static double roomMm(List<Column> columns, int i) {
        return columns.get(i).widthMm() - (i < columns.size() - 1 ? GAP_MM : 0);
    }

    @Override
    public double widthMm() {
        return columns.stream().mapToDouble(Column::widthMm).sum();
    }

    @Override
    public double heightMm() {
        int lines = cells.stream().mapToInt(List::size).max().orElse(1);
        double size = size(kind);
        if (kind == Kind.PROSE) {
            return size * PdfTypeface.LINE * lines;
        }
        double noted = textHeightMm(cells.get(noteColumn).size()) + HEAD_MM * PdfTypeface.LINE * note.size();
        return paddingOverMm() + PADDING_MM + Math.max(textHeightMm(lines), noted);
    }

    private double paddingOverMm() {
        return kind == Kind.PART ? 3 * PADDING_MM : PADDING_MM;
    }

    private double textHeightMm(int lines) {
        double size = size(kind);
        return size * (PdfTypeface.CAPITAL + PdfTypeface.DESCENT) + size * PdfTypeface.LINE * (Math.max(1, lines) - 1);
    }

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) throws IOException {
        double size = size(kind);
        double x = upperLeft.x();
        for (int i = 0; i < columns.size(); i++) {
            double y = upperLeft.y() - paddingOverMm() - size * PdfTypeface.CAPITAL;
            for (String line : cells.get(i)) {
                double indent = columns.get(i).numeric()
                        ? roomMm(columns, i) - canvas.typeface().widthMm(line, size)
                        : 0;
                canvas.write(line, new Point(x + indent, y), 0, size, kind == Kind.HEAD ? GREY : Color.BLACK);
                y -= size * PdfTypeface.LINE;
            }
            x += columns.get(i).widthMm();
        }
        writeNote(canvas, upperLeft);
        if (kind == Kind.PROSE) {
            return;
        }
        double bottom = upperLeft.y() - heightMm();
        canvas.draw(
                kind == Kind.HEAD || kind == Kind.PART ? HEAD_RULE : RULE,
                new Point(upperLeft.x(), bottom),
                new Point(upperLeft.x() + widthMm(), bottom));
        if (kind == Kind.CALLED_OUT) {
            Point bar = new Point(upperLeft.x() - 2.6, bottom + 0.3);
            canvas.fill(Color.BLACK, List.of(PdfCanvas.box(bar, new Point(bar.x() + 1.1, upperLeft.y() - 0.3))));
        }
    }

    private void writeNote(PdfCanvas canvas, Point upperLeft) throws IOException {
        double x = upperLeft.x()
                + columns.stream()
                        .limit(noteColumn)
                        .mapToDouble(Column::widthMm)
                        .sum();
        double y = upperLeft.y()
                - paddingOverMm()
                - SIZE_MM * PdfTypeface.CAPITAL
                - SIZE_MM * PdfTypeface.LINE * (cells.get(noteColumn).size() - 1);
        for (String line : note) {
            y -= HEAD_MM * PdfTypeface.LINE;
            canvas.write(line, new Point(x, y), 0, HEAD_MM, GREY);
        }
    }

    private static double size(Kind kind) {
        return switch (kind) {
            case HEAD -> HEAD_MM;
            case PART -> PART_MM;
            default -> SIZE_MM;
        };
    }
}
