package weltwright.app.gui.home;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.Icon;
import javax.swing.ImageIcon;

/** A picture, {@value #WIDTH} px wide on a display without scaling. */
final class PictureIcon implements Icon {
    private static final int WIDTH = 232;
    private static final int HEIGHT = 130;

    private final ImageIcon picture;

    PictureIcon(ImageIcon picture) {
        this.picture = picture;
    }

    @Override
    public int getIconWidth() {
        return UIScale.scale(WIDTH);
    }

    @Override
    public int getIconHeight() {
        return UIScale.scale(HEIGHT);
    }

    @Override
    public void paintIcon(Component component, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(picture.getImage(), x, y, getIconWidth(), getIconHeight(), null);
        g.dispose();
    }
}
