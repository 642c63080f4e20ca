package weltwright.output.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;

/**
 * A picture on the left, rows on the right.
 *
 * @param picture may be missing
 * @param rowsAtMm from the left side to the rows
 * @param rows one under another
 * @param widthMm of the whole
 */
public record SideBySideBlock(
        Optional<? extends PageBlock> picture, double rowsAtMm, List<? extends PageBlock> rows, double widthMm)
        implements PageBlock {

    @Override
    public double heightMm() {
        double rowsHeight = rows.stream().mapToDouble(PageBlock::heightMm).sum();
        return Math.max(rowsHeight, picture.map(PageBlock::heightMm).orElse(0.0));
    }

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) throws IOException {
        if (picture.isPresent()) {
            picture.get().draw(canvas, upperLeft);
        }
        double down = 0;
        for (PageBlock row : rows) {
            row.draw(canvas, upperLeft.plus(new Point(rowsAtMm, -down)));
            down += row.heightMm();
        }
    }
}
