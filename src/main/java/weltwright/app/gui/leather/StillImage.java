package weltwright.app.gui.leather;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.function.Consumer;
import weltwright.app.gui.theme.ThemeColors;

/**
 * What of a drawing stays as it is while something is dragged over it, painted once: many outlines with smooth edges
 * take longer than a picture of the screen may.
 */
final class StillImage {
    private Object key = "";
    private BufferedImage image = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);

    /**
     * Paints the image, made anew where its size or its key has changed.
     *
     * @param newKey equal as long as the image shows the same
     * @param painter paints what the image shows, on the background of canvases
     */
    void paint(Graphics2D g, int width, int height, Object newKey, Consumer<Graphics2D> painter) {
        double scale = g.getTransform().getScaleX();
        int widthPx = (int) Math.ceil(width * scale);
        int heightPx = (int) Math.ceil(height * scale);
        if (!newKey.equals(key) || image.getWidth() != widthPx || image.getHeight() != heightPx) {
            key = newKey;
            image = new BufferedImage(widthPx, heightPx, BufferedImage.TYPE_INT_RGB);
            Graphics2D on = image.createGraphics();
            on.setRenderingHints(g.getRenderingHints());
            on.scale(scale, scale);
            on.setColor(ThemeColors.canvas());
            on.fillRect(0, 0, width + 1, height + 1);
            on.setFont(g.getFont());
            painter.accept(on);
            on.dispose();
        }
        g.drawImage(image, AffineTransform.getScaleInstance(1 / scale, 1 / scale), null);
    }
}
