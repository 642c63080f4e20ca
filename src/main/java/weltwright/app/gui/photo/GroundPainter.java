package weltwright.app.gui.photo;

import java.awt.Graphics2D;
import java.util.List;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Polyline;

/** Paints the lines of a ground over the photo, thin enough that the photo's own lines stay visible. */
final class GroundPainter {
    /** Chosen by eye. */
    private static final double AWAY_PX = 10;

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

    /**
     * Paints the name of the ground at the upper left.
     *
     * @param rulerPx width of the rulers there
     */
    static void paintTitle(Graphics2D g, int rulerPx, String text) {
        AnnotationPainter.paintLabel(g, text, rulerPx + AWAY_PX, rulerPx + AWAY_PX, ThemeColors.groundOverlay());
    }
}
