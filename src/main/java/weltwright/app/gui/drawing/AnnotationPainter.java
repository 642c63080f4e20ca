package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Words and lines on a drawing, in pixels. */
public final class AnnotationPainter {
    private static final int PAD = 5;

    private AnnotationPainter() {}

    /** White words on a dark plate, to be read over any picture. Returns the x of the plate's right side. */
    public static double plate(Graphics2D g, String words, double x, double top) {
        return plate(g, words, x, top, Color.WHITE);
    }

    public static double plate(Graphics2D g, String words, double x, double top, Color colour) {
        FontMetrics metrics = g.getFontMetrics();
        double width = metrics.stringWidth(words) + 2.0 * PAD;
        g.setColor(ThemeColors.labelBackgroundOverlay());
        g.fill(new RoundRectangle2D.Double(x, top, width, metrics.getHeight() + 2, 8, 8));
        g.setColor(colour);
        g.drawString(words, (float) (x + PAD), (float) (top + 1 + metrics.getAscent()));
        return x + width;
    }

    /** A round pen so many pixels wide, at the user's scale. */
    public static BasicStroke pen(float widthPx) {
        return new BasicStroke(UIScale.scale(widthPx), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }

    /** Draws along a shape with a pen so many pixels wide, and leaves that pen and colour in hand. */
    public static void drawRimmed(Graphics2D g, Shape shape, float widthPx, Color colour) {
        g.setStroke(pen(widthPx + 2));
        g.setColor(ThemeColors.haloOverlay());
        g.draw(shape);
        g.setStroke(pen(widthPx));
        g.setColor(colour);
        g.draw(shape);
    }

    /** The chain as a shape, in the chain's own units. */
    public static Path2D path(Polyline line) {
        Path2D path = new Path2D.Double();
        Point first = line.points().get(0);
        path.moveTo(first.x(), first.y());
        line.points().stream().skip(1).forEach(p -> path.lineTo(p.x(), p.y()));
        if (line.closed()) {
            path.closePath();
        }
        return path;
    }
}
