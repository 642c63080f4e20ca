package weltwright.paper;

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
record SideBySide(Optional<? extends Block> picture, double rowsAtMm, List<? extends Block> rows, double widthMm)
        implements Block {

    @Override
    public double heightMm() {
        double rowsHeight = rows.stream().mapToDouble(Block::heightMm).sum();
        return Math.max(rowsHeight, picture.map(Block::heightMm).orElse(0.0));
    }

    @Override
    public void draw(Ink ink, Lettering lettering, Point upperLeft) throws IOException {
        if (picture.isPresent()) {
            picture.get().draw(ink, lettering, upperLeft);
        }
        double down = 0;
        for (Block row : rows) {
            row.draw(ink, lettering, upperLeft.plus(new Point(rowsAtMm, -down)));
            down += row.heightMm();
        }
    }
}
