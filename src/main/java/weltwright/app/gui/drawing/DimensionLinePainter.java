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

/**
 * Paints dimension lines with arrowheads, extension lines and text, all in px; texts do not overlap. Sizes chosen by
 * eye.
 */
public final class DimensionLinePainter {
    private static final double ARROWHEAD_PX = 6;
    private static final double OVERSHOOT_PX = 4;

    private final Graphics2D g;
    private final List<Rectangle2D> textBoxes = new ArrayList<>();

    public DimensionLinePainter(Graphics2D g) {
        this.g = g;
    }

    /**
     * Paints a horizontal dimension.
     *
     * @param fromY where the extension line at {@code x0} begins
     * @param toY where the extension line at {@code x1} begins
     * @param atY of the dimension line
     * @param size text
     */
    public void paintHorizontal(double x0, double fromY, double x1, double toY, double atY, String size) {
        setDimensionStroke();
        paintExtensionLine(x0, fromY, x0, atY + Math.copySign(OVERSHOOT_PX, atY - fromY));
        paintExtensionLine(x1, toY, x1, atY + Math.copySign(OVERSHOOT_PX, atY - toY));
        boolean narrow = Math.abs(x1 - x0) < 3 * ARROWHEAD_PX;
        g.draw(new Line2D.Double(narrow ? x0 - 2 * ARROWHEAD_PX : x0, atY, narrow ? x1 + 2 * ARROWHEAD_PX : x1, atY));
        paintArrowhead(x0, atY, narrow ? 1 : -1, 0);
        paintArrowhead(x1, atY, narrow ? -1 : 1, 0);
        FontMetrics metrics = g.getFontMetrics();
        paintText(size, (x0 + x1) / 2 - metrics.stringWidth(size) / 2.0, atY + 4, metrics.getHeight() + 1.0);
    }

    /**
     * Paints a vertical dimension; {@code top} is the lesser y, the other parameters are as in
     * {@link #paintHorizontal}.
     */
    public void paintVertical(double top, double fromX, double bottom, double toX, double atX, String size) {
        setDimensionStroke();
        paintExtensionLine(fromX, top, atX + Math.copySign(OVERSHOOT_PX, atX - fromX), top);
        paintExtensionLine(toX, bottom, atX + Math.copySign(OVERSHOOT_PX, atX - toX), bottom);
        boolean narrow = bottom - top < 3 * ARROWHEAD_PX;
        g.draw(new Line2D.Double(
                atX, narrow ? top - 2 * ARROWHEAD_PX : top, atX, narrow ? bottom + 2 * ARROWHEAD_PX : bottom));
        paintArrowhead(atX, top, 0, narrow ? 1 : -1);
        paintArrowhead(atX, bottom, 0, narrow ? -1 : 1);
        FontMetrics metrics = g.getFontMetrics();
        double width = metrics.stringWidth(size);
        double x = atX > fromX ? atX + 5 : atX - 5 - width;
        paintText(size, x, (top + bottom) / 2 - metrics.getHeight() / 2.0, metrics.getHeight());
    }

    /** Paints a text, moved down by multiples of {@code step} until it overlaps none of the texts before. */
    private void paintText(String size, double left, double top, double step) {
        FontMetrics metrics = g.getFontMetrics();
        Rectangle2D box = new Rectangle2D.Double(left - 3, top, metrics.stringWidth(size) + 6.0, metrics.getHeight());
        while (textBoxes.stream().anyMatch(box::intersects)) {
            box.setRect(box.getX(), box.getY() + step, box.getWidth(), box.getHeight());
        }
        textBoxes.add(box);
        Color background = ThemeColors.canvas();
        g.setColor(new Color(background.getRed(), background.getGreen(), background.getBlue(), 210));
        g.fill(box);
        g.setColor(ThemeColors.text());
        g.drawString(size, (float) box.getX() + 3, (float) (box.getY() + metrics.getAscent()));
    }

    private void setDimensionStroke() {
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.roundStroke(0.9f));
    }

    private void paintExtensionLine(double x0, double y0, double x1, double y1) {
        g.setStroke(AnnotationPainter.roundStroke(0.5f));
        g.draw(new Line2D.Double(x0, y0, x1, y1));
        g.setStroke(AnnotationPainter.roundStroke(0.9f));
    }

    /** Paints an arrowhead at (x, y) that points along the axis direction (dx, dy). */
    private void paintArrowhead(double x, double y, int dx, int dy) {
        double length = UIScale.scale((float) ARROWHEAD_PX);
        Path2D head = new Path2D.Double();
        head.moveTo(x, y);
        head.lineTo(x - dx * length - dy * length / 3, y - dy * length - dx * length / 3);
        head.lineTo(x - dx * length + dy * length / 3, y - dy * length + dx * length / 3);
        head.closePath();
        g.fill(head);
    }
}
