package weltwright.paper;

import weltwright.geometry.Point;

/** Nothing, between one block and the next. */
record Air(double heightMm) implements Block {

    @Override
    public double widthMm() {
        return 0;
    }

    @Override
    public void draw(Ink ink, Lettering lettering, Point upperLeft) {}
}
