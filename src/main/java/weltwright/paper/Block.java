package weltwright.paper;

import java.io.IOException;
import weltwright.geometry.Point;

/** Something beside the pieces that is printed once, wherever there is room: words, a legend. */
interface Block {
    double widthMm();

    double heightMm();

    void draw(Ink ink, Lettering lettering, Point upperLeft) throws IOException;
}
