package weltwright.app.gui.leather;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import javax.swing.Icon;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.layout.stock.Stock;

/** A piece of stock drawn small, its direction of least stretch from left to right. Sizes chosen by eye. */
final class StockIcon implements Icon {
    private static final int WIDTH_PX = 52;
    private static final int HEIGHT_PX = 40;
    private static final int MARGIN_PX = 2;

    /** A side of this length fills the icon; smaller stock is drawn smaller, but never below a half. */
    private static final double LARGE_MM = 1000;

    private final Stock stock;

    StockIcon(Stock stock) {
        this.stock = stock;
    }

    @Override
    public void paintIcon(Component component, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create(x, y, getIconWidth(), getIconHeight());
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        Shape outline = AnnotationPainter.path(stock.outline());
        Rectangle2D extent = outline.getBounds2D();
        double margin = 2.0 * UIScale.scale(MARGIN_PX);
        double fit = Math.min(
                (getIconWidth() - margin) / extent.getWidth(), (getIconHeight() - margin) / extent.getHeight());
        double size = Math.max(0.5, Math.min(1, Math.max(extent.getWidth(), extent.getHeight()) / LARGE_MM));
        double scale = fit * size;
        AffineTransform toPx = new AffineTransform(
                scale,
                0,
                0,
                -scale,
                getIconWidth() / 2.0 - scale * extent.getCenterX(),
                getIconHeight() / 2.0 + scale * extent.getCenterY());
        g.setColor(ThemeColors.leather());
        g.fill(toPx.createTransformedShape(outline));
        g.setColor(ThemeColors.cutLine());
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.draw(toPx.createTransformedShape(outline));
        stock.flaws().forEach(flaw -> g.draw(toPx.createTransformedShape(AnnotationPainter.path(flaw))));
        g.dispose();
    }

    @Override
    public int getIconWidth() {
        return UIScale.scale(WIDTH_PX);
    }

    @Override
    public int getIconHeight() {
        return UIScale.scale(HEIGHT_PX);
    }
}
