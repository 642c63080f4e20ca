package weltwright.output.card;

import java.io.IOException;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.output.pdf.PageBlock;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;

/**
 * The title of a part of the bench card, and a few lines under it.
 *
 * @param text in large letters
 * @param below lines in small letters; may be none
 * @param widthMm of the part
 */
record CardTitle(String text, List<String> below, double widthMm) implements PageBlock {
    private static final double SIZE_MM = 4.2;
    private static final double BELOW_MM = 2.7;
    private static final double OVER_MM = 5;
    private static final double UNDER_MM = 1.2;

    static CardTitle of(PdfTypeface typeface, String text, String below, double widthMm) {
        List<String> lines = below.isEmpty() ? List.of() : typeface.wrap(below, widthMm, BELOW_MM);
        return new CardTitle(text, lines, widthMm);
    }

    @Override
    public double heightMm() {
        return OVER_MM
                + SIZE_MM * PdfTypeface.CAPITAL
                + UNDER_MM
                + below.size() * BELOW_MM * PdfTypeface.LINE
                + (below.isEmpty() ? 0 : UNDER_MM);
    }

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) throws IOException {
        double y = upperLeft.y() - OVER_MM - SIZE_MM * PdfTypeface.CAPITAL;
        canvas.write(text, new Point(upperLeft.x(), y), SIZE_MM);
        for (String line : below) {
            y -= BELOW_MM * PdfTypeface.LINE + (line.equals(below.get(0)) ? UNDER_MM : 0);
            canvas.write(line, new Point(upperLeft.x(), y), BELOW_MM);
        }
    }
}
