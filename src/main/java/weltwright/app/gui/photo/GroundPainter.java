package weltwright.app.gui.photo;

import java.awt.Graphics2D;
import java.util.List;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Polyline;

/** Paints the lines of a found ground over the photo, thin enough to see beneath them whether they lie on its own. */
final class GroundPainter {

    private GroundPainter() {}

    /** @param lines in the drawing's mm */
    static void paint(Graphics2D g, Viewport at, List<Polyline> lines) {
        for (boolean halo : new boolean[] {true, false}) {
            g.setColor(halo ? ThemeColors.groundHaloOverlay() : ThemeColors.groundLineOverlay());
            g.setStroke(AnnotationPainter.pen(halo ? 2.2f : 0.9f));
            for (Polyline line : lines) {
                g.draw(at.transform().createTransformedShape(AnnotationPainter.path(line)));
            }
        }
    }

    /** What the lines show, at the drawing's upper left. */
    static void title(Graphics2D g, String words) {
        AnnotationPainter.plate(g, words, 12, 10, ThemeColors.groundOverlay());
    }
}
