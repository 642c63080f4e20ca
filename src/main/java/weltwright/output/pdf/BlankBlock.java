package weltwright.output.pdf;

import weltwright.geometry.Point;

/** A vertical gap between blocks. */
public record BlankBlock(double heightMm) implements PageBlock {

    @Override
    public double widthMm() {
        return 0;
    }

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) {}
}
