package weltwright.output.pdf;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import weltwright.geometry.Point;

/**
 * A title over paragraphs, broken into lines of a width.
 *
 * @param title in larger letters
 * @param lines printable; an empty one is half a line of space
 * @param widthMm that no line is wider than
 */
public record TextBlock(String title, List<String> lines, double widthMm) implements PageBlock {
    private static final double TITLE_MM = 3.6;
    private static final double SIZE_MM = 2.7;
    /** Widths of a column, in order of preference. Chosen by eye. */
    private static final List<Double> COLUMNS_MM = List.of(75.0, 110.0, 55.0, 150.0);

    /** Greatest height of a block of the first width; longer text is split. */
    private static final double HIGHEST_MM = 150;

    /**
     * Returns the text as one block or, where they are many, several; each in the shapes that it may take, best first.
     */
    public static List<List<TextBlock>> columns(PdfTypeface typeface, String title, List<String> paragraphs) {
        List<List<TextBlock>> blocks = new ArrayList<>();
        List<String> some = new ArrayList<>();
        Deque<String> rest = new ArrayDeque<>(paragraphs);
        while (!rest.isEmpty()) {
            String next = rest.pop();
            some.add(next);
            if (of(typeface, title, some, COLUMNS_MM.get(0)).heightMm() <= HIGHEST_MM) {
                continue;
            }
            some.remove(some.size() - 1);
            if (some.isEmpty()) {
                int middle = next.offsetByCodePoints(0, next.codePointCount(0, next.length()) / 2);
                int space = next.indexOf(' ', middle);
                int end = space < 0 ? middle : space;
                rest.push(next.substring(end));
                rest.push(next.substring(0, end));
            } else {
                rest.push(next);
                blocks.add(shapes(typeface, title, some));
                some.clear();
            }
        }
        blocks.add(shapes(typeface, title, some));
        return blocks;
    }

    private static List<TextBlock> shapes(PdfTypeface typeface, String title, List<String> paragraphs) {
        return COLUMNS_MM.stream()
                .map(width -> of(typeface, title, paragraphs, width))
                .toList();
    }

    static TextBlock of(PdfTypeface typeface, String title, List<String> paragraphs, double widthMm) {
        List<String> lines = new ArrayList<>();
        for (String paragraph : paragraphs) {
            if (!lines.isEmpty()) {
                lines.add("");
            }
            lines.addAll(typeface.wrap(paragraph, widthMm, SIZE_MM));
        }
        return new TextBlock(title, List.copyOf(lines), widthMm);
    }

    @Override
    public double heightMm() {
        return TITLE_MM * PdfTypeface.LINE * 1.2
                + lines.stream().mapToDouble(TextBlock::lineMm).sum();
    }

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) throws IOException {
        double y = upperLeft.y() - TITLE_MM * PdfTypeface.CAPITAL;
        canvas.write(title, new Point(upperLeft.x(), y), TITLE_MM);
        y = upperLeft.y() - TITLE_MM * PdfTypeface.LINE * 1.2;
        for (String line : lines) {
            if (!line.isEmpty()) {
                canvas.write(line, new Point(upperLeft.x(), y - SIZE_MM * PdfTypeface.CAPITAL), SIZE_MM);
            }
            y -= lineMm(line);
        }
    }

    private static double lineMm(String line) {
        return SIZE_MM * (line.isEmpty() ? 0.5 : PdfTypeface.LINE);
    }
}
