package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PageBlock;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;

/**
 * What lines mean: a sample of each and its meaning.
 *
 * @param styles those that the pattern uses, or some of them
 * @param columns that they are shared out over, from the top down
 * @param columnMm from one column to the next
 */
record LegendBlock(String title, List<LineStyle> styles, int columns, double columnMm) implements PageBlock {
    private static final Messages TEXTS = Messages.of(LegendBlock.class);

    private static final double TITLE_MM = 2.9;
    private static final double TITLE_LINE_MM = 4;
    private static final double SIZE_MM = 2.4;
    /** In a ring that stands clear of the next row's. */
    private static final double LETTER_MM = 2.0;

    private static final double ROW_MM = 3.8;
    private static final double SAMPLE_MM = 12;
    private static final double GAP_MM = 1.5;
    private static final int MOST_COLUMNS = 4;

    /**
     * The ways to print a legend, the one liked best first: as one block, in one column or more; in two blocks, of the
     * lines and of the edges, for smaller gaps between the pieces.
     */
    static List<List<LegendBlock>> ways(PdfTypeface typeface, List<LineStyle> styles) {
        List<LineStyle> edges = styles.stream().filter(LineStyle::isEdge).toList();
        List<LineStyle> lines = styles.stream().filter(style -> !style.isEdge()).toList();
        List<List<LegendBlock>> ways = new ArrayList<>();
        shapes(typeface, TEXTS.text("legend-block.what-the-lines-mean"), styles)
                .forEach(whole -> ways.add(List.of(whole)));
        if (!edges.isEmpty()) {
            for (LegendBlock ofLines : shapes(typeface, TEXTS.text("legend-block.what-the-lines-mean"), lines)) {
                for (LegendBlock ofEdges : shapes(typeface, TEXTS.text("legend-block.what-is-done-to-edges"), edges)) {
                    ways.add(List.of(ofLines, ofEdges));
                }
            }
        }
        return List.copyOf(ways);
    }

    /** In one column, and lower and wider in more. */
    private static List<LegendBlock> shapes(PdfTypeface typeface, String title, List<LineStyle> styles) {
        double textMm = styles.stream()
                .mapToDouble(style -> typeface.widthMm(style.meaning(), SIZE_MM))
                .max()
                .orElse(0);
        double column = SAMPLE_MM + 3 * GAP_MM + textMm;
        return IntStream.rangeClosed(1, Math.min(MOST_COLUMNS, styles.size()))
                .mapToObj(columns -> new LegendBlock(title, styles, columns, column))
                .toList();
    }

    @Override
    public double widthMm() {
        return columns * columnMm - 2 * GAP_MM;
    }

    @Override
    public double heightMm() {
        return TITLE_LINE_MM + rows() * ROW_MM;
    }

    private int rows() {
        return (styles.size() + columns - 1) / columns;
    }

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) throws IOException {
        canvas.write(title, upperLeft.minus(new Point(0, TITLE_MM * PdfTypeface.CAPITAL)), TITLE_MM);
        double top = upperLeft.y() - TITLE_LINE_MM - ROW_MM / 2;
        for (int i = 0; i < styles.size(); i++) {
            Point at = new Point(upperLeft.x() + Math.floorDiv(i, rows()) * columnMm, top - i % rows() * ROW_MM);
            sample(canvas, styles.get(i), at);
            Point base = at.plus(new Point(SAMPLE_MM + GAP_MM, -SIZE_MM * PdfTypeface.CAPITAL / 2));
            canvas.write(styles.get(i).meaning(), base, SIZE_MM);
        }
    }

    private static void sample(PdfCanvas canvas, LineStyle style, Point left) throws IOException {
        Point right = left.plus(new Point(SAMPLE_MM, 0));
        Point middle = left.towards(right, 0.5);
        switch (style) {
            case HOLE -> {
                canvas.circle(style.stroke(), middle, 1.5);
                canvas.dot(Color.BLACK, middle, 0.25);
            }
            case STITCH_ROW -> {
                List<Hole> holes = DoubleStream.of(0.15, 0.5, 0.85)
                        .mapToObj(at -> new Hole(left.towards(right, at), 1.2, Hole.Use.STITCH))
                        .toList();
                for (Polyline stroke : PieceDrawing.betweenHoles(Polyline.open(List.of(left, right)), holes)) {
                    canvas.draw(style.stroke(), stroke);
                }
                for (Hole hole : holes) {
                    canvas.circle(LineStyle.HOLE.stroke(), hole.centre(), hole.diameterMm() / 2);
                }
            }
            case NOTCH, STITCH_END, IRON -> {
                Point half = new Point(0, style == LineStyle.IRON ? 0.6 : 1.2);
                canvas.draw(style.stroke(), middle.minus(half), middle.plus(half));
                // Its line at the edge or in the row: what tells the two strokes apart is what they stand on.
                LineStroke stoodOn = (style == LineStyle.NOTCH ? LineStyle.CUT : LineStyle.STITCH_ROW).stroke();
                Point base = style == LineStyle.NOTCH ? new Point(0, -1.2) : new Point(0, 0);
                canvas.draw(stoodOn, left.plus(base), right.plus(base));
            }
            case GRAIN -> {
                Mark arrow = new Mark(Polyline.open(List.of(left, right)), Mark.Kind.GRAIN, "");
                for (Polyline stroke : PieceDrawing.strokes(arrow)) {
                    canvas.draw(style.stroke(), stroke);
                }
            }
            case EDGE_BEFORE, EDGE_SEWN, EDGE_FREE, EDGE_UNWORKED -> {
                Point end = right.minus(new Point(ROW_MM, 0));
                Point half = new Point(0, EdgeStateLine.INSIDE_MM / 2);
                canvas.draw(LineStyle.CUT.stroke(), left.plus(half), end.plus(half));
                if (style != LineStyle.EDGE_UNWORKED) {
                    canvas.draw(style.stroke(), left.minus(half), end.minus(half));
                }
                Label.of(
                                canvas.typeface(),
                                List.of(style.letter()),
                                LETTER_MM,
                                right.minus(new Point(ROW_MM / 2, 0)),
                                0)
                        .inRing()
                        .draw(canvas);
            }
            default -> canvas.draw(style.stroke(), left, right);
        }
    }
}
