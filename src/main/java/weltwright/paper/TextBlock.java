package weltwright.paper;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;

/**
 * A title over paragraphs, broken into lines of a width.
 *
 * @param title in larger letters
 * @param lines printable; an empty one is half a line of air
 * @param widthMm that no line is wider than
 */
record TextBlock(String title, List<String> lines, double widthMm) implements Block {
    private static final double TITLE_MM = 3.6;
    private static final double SIZE_MM = 2.7;

    static TextBlock of(Lettering lettering, String title, List<String> paragraphs, double widthMm) {
        List<String> lines = new ArrayList<>();
        for (String paragraph : paragraphs) {
            if (!lines.isEmpty()) {
                lines.add("");
            }
            lines.addAll(lettering.wrap(paragraph, widthMm, SIZE_MM));
        }
        return new TextBlock(title, List.copyOf(lines), widthMm);
    }

    @Override
    public double heightMm() {
        return TITLE_MM * Lettering.LINE * 1.2 + lines.stream().mapToDouble(TextBlock::lineMm).sum();
    }

    @Override
    public void draw(Ink ink, Lettering lettering, Point upperLeft) throws IOException {
        double y = upperLeft.y() - TITLE_MM * Lettering.CAPITAL;
        ink.write(title, new Point(upperLeft.x(), y), 0, TITLE_MM, Color.BLACK);
        y = upperLeft.y() - TITLE_MM * Lettering.LINE * 1.2;
        for (String line : lines) {
            if (!line.isEmpty()) {
                ink.write(line, new Point(upperLeft.x(), y - SIZE_MM * Lettering.CAPITAL), 0, SIZE_MM, Color.BLACK);
            }
            y -= lineMm(line);
        }
    }

    private static double lineMm(String line) {
        return SIZE_MM * (line.isEmpty() ? 0.5 : Lettering.LINE);
    }
}
