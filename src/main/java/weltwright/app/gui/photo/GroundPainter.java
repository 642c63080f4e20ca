package weltwright.app.gui.photo;

import java.awt.Graphics2D;
import java.util.List;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Polyline;

/** Paints the lines of a ground over the photo, thin enough that the photo's own lines stay visible. */
final class GroundPainter {

    private GroundPainter() {}

    /** @param lines in mm of the drawing */
    static void paint(Graphics2D g, Viewport viewport, List<Polyline> lines) {
        for (boolean halo : new boolean[] {true, false}) {
            g.setColor(halo ? ThemeColors.groundHaloOverlay() : ThemeColors.groundLineOverlay());
            g.setStroke(AnnotationPainter.roundStroke(halo ? 2.2f : 0.9f));
            for (Polyline line : lines) {
                g.draw(viewport.transform().createTransformedShape(AnnotationPainter.path(line)));
            }
        }
    }

    /** Paints the name of the ground at the upper left. */
    static void paintTitle(Graphics2D g, String text) {
        AnnotationPainter.paintLabel(g, text, 12, 10, ThemeColors.groundOverlay());
    }
}
