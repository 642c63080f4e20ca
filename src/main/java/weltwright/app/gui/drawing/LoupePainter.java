package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.function.BiConsumer;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;

/** Paints what lies round a point of a drawing magnified, in a circle beside it. Sizes in px chosen by eye. */
public final class LoupePainter {
    private static final float DIAMETER_PX = 168;
    private static final float AWAY_PX = 28;
    private static final double MAGNIFICATION = 4;
    private static final float GAP_PX = 5;

    private LoupePainter() {}

    /**
     * Paints the loupe at the upper right of a point, or on another side where it would leave the canvas.
     *
     * @param centre the point, in mm
     * @param content paints the drawing, without what would hide the point
     */
    public static void paint(Graphics2D g, Viewport viewport, Point centre, BiConsumer<Graphics2D, Viewport> content) {
        double size = UIScale.scale(DIAMETER_PX);
        double away = UIScale.scale(AWAY_PX);
        Point px = viewport.toPx(centre);
        double left = px.x() + away + size <= viewport.widthPx() ? px.x() + away : px.x() - away - size;
        double top = px.y() - away - size >= 0 ? px.y() - away - size : px.y() + away;
        Ellipse2D rim = new Ellipse2D.Double(left, top, size, size);
        Graphics2D inside = (Graphics2D) g.create();
        inside.clip(rim);
        inside.transform(AffineTransform.getTranslateInstance(left, top));
        inside.setColor(ThemeColors.canvas());
        inside.fillRect(0, 0, (int) size + 1, (int) size + 1);
        content.accept(inside, new Viewport(MAGNIFICATION * viewport.pxPerMm(), centre, size, size));
        inside.setStroke(AnnotationPainter.roundStroke(1));
        inside.setColor(ThemeColors.handleOverlay());
        double middle = size / 2;
        double gap = UIScale.scale(GAP_PX);
        for (int side = -1; side <= 1; side += 2) {
            inside.draw(new Line2D.Double(middle + side * gap, middle, middle + side * 3 * gap, middle));
            inside.draw(new Line2D.Double(middle, middle + side * gap, middle, middle + side * 3 * gap));
        }
        inside.dispose();
        AnnotationPainter.paintWithHalo(g, rim, 2, Color.WHITE);
    }
}
