package weltwright.app.gui.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;

/**
 * The image behind a drawing, kept as it was last scaled: while something is dragged over it, each frame copies the
 * pixels of the screen instead of scaling a photo of many megapixels.
 */
public final class BackgroundLayer {
    private Optional<BackgroundImage> image = Optional.empty();
    private @Nullable Scaled scaled;

    private record Key(BackgroundImage image, Viewport viewport, double scale, Color ground) {}

    private record Scaled(Key key, BufferedImage pixels) {}

    public void setImage(Optional<BackgroundImage> newImage) {
        image = newImage;
        scaled = null;
    }

    public Optional<BackgroundImage> image() {
        return image;
    }

    public Optional<Rectangle2D> extent() {
        return image.map(BackgroundImage::extent);
    }

    /** Paints the image over the whole viewport, with the canvas's colour beside it. */
    public void paint(Graphics2D g, Viewport viewport) {
        image.ifPresent(photo -> {
            double scale = g.getTransform().getScaleX();
            Key key = new Key(photo, viewport, scale, ThemeColors.canvas());
            if (scaled == null || !scaled.key().equals(key)) {
                scaled = new Scaled(key, scaled(key));
            }
            g.drawImage(scaled.pixels(), AffineTransform.getScaleInstance(1 / scale, 1 / scale), null);
        });
    }

    private static BufferedImage scaled(Key key) {
        BufferedImage pixels = new BufferedImage(
                (int) Math.ceil(Math.max(1, key.viewport().widthPx()) * key.scale()),
                (int) Math.ceil(Math.max(1, key.viewport().heightPx()) * key.scale()),
                BufferedImage.TYPE_INT_RGB);
        Graphics2D g = pixels.createGraphics();
        g.setColor(key.ground());
        g.fillRect(0, 0, pixels.getWidth(), pixels.getHeight());
        g.scale(key.scale(), key.scale());
        key.image().paint(g, key.viewport());
        g.dispose();
        return pixels;
    }
}
