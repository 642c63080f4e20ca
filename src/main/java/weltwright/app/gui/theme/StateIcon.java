package weltwright.app.gui.theme;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.function.Supplier;
import javax.swing.Icon;

/** The shapes for states of work and for findings, 16 px wide: told apart by shape first and by colour second. */
public enum StateIcon implements Icon {
    /** An open ring. */
    RING(ThemeColors::secondaryText),
    /** A dot on an open arc. */
    DOT(ThemeColors::accent),
    TICK(ThemeColors::success),
    /** An exclamation mark in a triangle. */
    EXCLAMATION_MARK(ThemeColors::warning),
    /** A cross in an octagon. */
    CROSS(ThemeColors::error),
    /** The letter i in a ring. */
    NOTE(ThemeColors::secondaryText);

    private static final int SIZE = 16;

    private final Supplier<Color> color;

    StateIcon(Supplier<Color> color) {
        this.color = color;
    }

    @Override
    public int getIconWidth() {
        return UIScale.scale(SIZE);
    }

    @Override
    public int getIconHeight() {
        return UIScale.scale(SIZE);
    }

    @Override
    public void paintIcon(Component component, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(x, y);
        double scale = UIScale.scale(1f);
        g.transform(AffineTransform.getScaleInstance(scale, scale));
        g.setColor(color.get());
        g.setStroke(new BasicStroke(1.75f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        switch (this) {
            case RING -> g.draw(new Ellipse2D.Double(3, 3, 10, 10));
            case DOT -> {
                g.draw(new Arc2D.Double(2.5, 2.5, 11, 11, 60, 240, Arc2D.OPEN));
                g.fill(new Ellipse2D.Double(5.5, 5.5, 5, 5));
            }
            case TICK -> g.draw(line(2.5, 8.5, 6.5, 12.5, 13.5, 4));
            case EXCLAMATION_MARK -> {
                Path2D triangle = line(8, 1.8, 14.8, 14, 1.2, 14);
                triangle.closePath();
                g.draw(triangle);
                g.draw(line(8, 6, 8, 9.3));
                g.fill(new Ellipse2D.Double(7, 11, 2, 2));
            }
            case CROSS -> {
                Path2D octagon = line(5, 1.5, 11, 1.5, 14.5, 5, 14.5, 11, 11, 14.5, 5, 14.5, 1.5, 11, 1.5, 5);
                octagon.closePath();
                g.draw(octagon);
                g.draw(line(5.5, 5.5, 10.5, 10.5));
                g.draw(line(10.5, 5.5, 5.5, 10.5));
            }
            case NOTE -> {
                g.draw(new Ellipse2D.Double(1.5, 1.5, 13, 13));
                g.draw(line(8, 7.5, 8, 11));
                g.fill(new Ellipse2D.Double(7, 4, 2, 2));
            }
        }
        g.dispose();
    }

    private static Path2D line(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        return path;
    }
}
