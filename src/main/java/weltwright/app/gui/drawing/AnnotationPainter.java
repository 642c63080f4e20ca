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

/** Paints labels and lines on a canvas, in px. */
public final class AnnotationPainter {
    private static final int PADDING_PX = 5;

    private AnnotationPainter() {}

    /**
     * Paints white text on a dark rounded rectangle, legible over any photo.
     *
     * @param x left side of the rectangle
     * @return x of its right side
     */
    public static double paintLabel(Graphics2D g, String text, double x, double top) {
        return paintLabel(g, text, x, top, Color.WHITE);
    }

    public static double paintLabel(Graphics2D g, String text, double x, double top, Color color) {
        FontMetrics metrics = g.getFontMetrics();
        double width = metrics.stringWidth(text) + 2.0 * PADDING_PX;
        g.setColor(ThemeColors.labelBackgroundOverlay());
        g.fill(new RoundRectangle2D.Double(x, top, width, metrics.getHeight() + 2, 8, 8));
        g.setColor(color);
        g.drawString(text, (float) (x + PADDING_PX), (float) (top + 1 + metrics.getAscent()));
        return x + width;
    }

    /** Paints a text in the middle of an empty canvas: what it waits for. */
    public static void paintPlaceholder(Graphics2D g, String text, int canvasWidthPx, int canvasHeightPx) {
        g.setColor(ThemeColors.secondaryText());
        g.drawString(text, (canvasWidthPx - g.getFontMetrics().stringWidth(text)) / 2f, canvasHeightPx / 2f);
    }

    /**
     * Returns a solid stroke with round caps and joins.
     *
     * @param widthPx in px at 96 dpi; scaled to the display
     */
    public static BasicStroke roundStroke(float widthPx) {
        return new BasicStroke(UIScale.scale(widthPx), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }

    /**
     * Draws a shape in a colour over a dark halo that is 2 px wider. The stroke and the colour remain set in {@code g}.
     */
    public static void paintWithHalo(Graphics2D g, Shape shape, float widthPx, Color color) {
        g.setStroke(roundStroke(widthPx + 2));
        g.setColor(ThemeColors.haloOverlay());
        g.draw(shape);
        g.setStroke(roundStroke(widthPx));
        g.setColor(color);
        g.draw(shape);
    }

    /** Returns the polyline as a path with the same coordinates. */
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
