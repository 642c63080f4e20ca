package weltwright.window;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.stream.IntStream;

/** The program's sign: a sheath with its row of stitches, drawn at each size that a desktop asks for. */
final class WindowIcon {
    private static final Color GROUND = new Color(0x34495e);
    private static final Color LEATHER = new Color(0xd19a5b);
    private static final Color SHADE = new Color(0x7a4b22);
    private static final Color THREAD = new Color(0xfff3df);
    private static final double DRAWN_AT = 64;
    private static final int STITCHES = 6;

    private WindowIcon() {}

    static List<Image> images() {
        return IntStream.of(16, 20, 24, 32, 48, 64, 128, 256)
                .mapToObj(WindowIcon::image)
                .toList();
    }

    private static Image image(int size) {
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.scale(size / DRAWN_AT, size / DRAWN_AT);
        g.setColor(GROUND);
        g.fillRoundRect(0, 0, 64, 64, 16, 16);
        Path2D sheath = new Path2D.Double();
        sheath.moveTo(20, 8);
        sheath.lineTo(44, 12);
        sheath.curveTo(47, 30, 43, 46, 27, 57);
        sheath.curveTo(20, 46, 19, 28, 20, 8);
        sheath.closePath();
        g.setColor(LEATHER);
        g.fill(sheath);
        g.setColor(SHADE);
        g.setStroke(new BasicStroke(2.5f));
        g.draw(sheath);
        g.setColor(THREAD);
        for (int i = 0; i < STITCHES; i++) {
            double t = i / (STITCHES - 1.0);
            double x = 40 + 2 * t - 13 * t * t;
            double y = 16 + 34 * t;
            g.fill(new Ellipse2D.Double(x - 1.8, y - 1.8, 3.6, 3.6));
        }
        g.dispose();
        return image;
    }
}
