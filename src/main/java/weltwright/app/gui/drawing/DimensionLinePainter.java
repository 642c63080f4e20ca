package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import weltwright.app.gui.theme.ThemeColors;

/** Dimension lines as on a drawing: from arrow to arrow, with thin lines from what they measure. In pixels. */
public final class DimensionLinePainter {
    private static final double HEAD = 6;
    private static final double BEYOND = 4;

    private final Graphics2D g;
    private final List<Rectangle2D> words = new ArrayList<>();

    public DimensionLinePainter(Graphics2D g) {
        this.g = g;
    }

    /**
     * A size across.
     *
     * @param atY where its line runs
     * @param fromY where the thin line at its left end comes from; {@code toY} the same at its right end
     */
    public void across(double x0, double fromY, double x1, double toY, double atY, String size) {
        pen();
        thin(x0, fromY, x0, atY + Math.copySign(BEYOND, atY - fromY));
        thin(x1, toY, x1, atY + Math.copySign(BEYOND, atY - toY));
        boolean narrow = Math.abs(x1 - x0) < 3 * HEAD;
        g.draw(new Line2D.Double(narrow ? x0 - 2 * HEAD : x0, atY, narrow ? x1 + 2 * HEAD : x1, atY));
        head(x0, atY, narrow ? 1 : -1, 0);
        head(x1, atY, narrow ? -1 : 1, 0);
        FontMetrics metrics = g.getFontMetrics();
        words(size, (x0 + x1) / 2 - metrics.stringWidth(size) / 2.0, atY + 4, metrics.getHeight() + 1.0);
    }

    /** A size upright; {@code fromX} and {@code toX} as in {@link #across}, {@code top} the lesser y. */
    public void upright(double top, double fromX, double bottom, double toX, double atX, String size) {
        pen();
        thin(fromX, top, atX + Math.copySign(BEYOND, atX - fromX), top);
        thin(toX, bottom, atX + Math.copySign(BEYOND, atX - toX), bottom);
        boolean narrow = bottom - top < 3 * HEAD;
        g.draw(new Line2D.Double(atX, narrow ? top - 2 * HEAD : top, atX, narrow ? bottom + 2 * HEAD : bottom));
        head(atX, top, 0, narrow ? 1 : -1);
        head(atX, bottom, 0, narrow ? -1 : 1);
        FontMetrics metrics = g.getFontMetrics();
        double width = metrics.stringWidth(size);
        double x = atX > fromX ? atX + 5 : atX - 5 - width;
        words(size, x, (top + bottom) / 2 - metrics.getHeight() / 2.0, metrics.getHeight());
    }

    /** The words, moved down until they cover no others. */
    private void words(String size, double left, double top, double step) {
        FontMetrics metrics = g.getFontMetrics();
        Rectangle2D box = new Rectangle2D.Double(left - 3, top, metrics.stringWidth(size) + 6.0, metrics.getHeight());
        while (words.stream().anyMatch(box::intersects)) {
            box.setRect(box.getX(), box.getY() + step, box.getWidth(), box.getHeight());
        }
        words.add(box);
        Color table = ThemeColors.canvas();
        g.setColor(new Color(table.getRed(), table.getGreen(), table.getBlue(), 210));
        g.fill(box);
        g.setColor(ThemeColors.text());
        g.drawString(size, (float) box.getX() + 3, (float) (box.getY() + metrics.getAscent()));
    }

    private void pen() {
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.pen(0.9f));
    }

    private void thin(double x0, double y0, double x1, double y1) {
        g.setStroke(AnnotationPainter.pen(0.5f));
        g.draw(new Line2D.Double(x0, y0, x1, y1));
        g.setStroke(AnnotationPainter.pen(0.9f));
    }

    /** An arrow's head that points along (dx, dy). */
    private void head(double x, double y, int dx, int dy) {
        double length = UIScale.scale((float) HEAD);
        Path2D head = new Path2D.Double();
        head.moveTo(x, y);
        head.lineTo(x - dx * length - dy * length / 3, y - dy * length - dx * length / 3);
        head.lineTo(x - dx * length + dy * length / 3, y - dy * length + dx * length / 3);
        head.closePath();
        g.fill(head);
    }
}
