package weltwright.app.gui.finding;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import javax.swing.Icon;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.sheath.pattern.Severity;

/** The sign of a severity, told by its shape and by its colour: octagon and bar, triangle and stroke, ring and dot. */
record SeverityIcon(Severity severity) implements Icon {
    private static final float SIZE_PX = 16;
    private static final float LINE_PX = 1.5f;

    @Override
    public void paintIcon(Component c, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(x, y);
        double scale = UIScale.scale(1f);
        g.scale(scale, scale);
        g.setColor(color());
        g.setStroke(new BasicStroke(LINE_PX, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        if (severity == Severity.STOP) {
            g.fill(outline());
            g.setColor(ThemeColors.canvas());
            g.fill(new Rectangle2D.Double(4.5, 7, 7, 2));
        } else {
            g.draw(outline());
            double top = severity == Severity.MIND ? 6 : 7;
            g.fill(new Rectangle2D.Double(7.25, top, LINE_PX, 3.5));
            g.fill(new Ellipse2D.Double(7.1, severity == Severity.MIND ? 10.8 : 4.2, 1.8, 1.8));
        }
        g.dispose();
    }

    private Color color() {
        return switch (severity) {
            case STOP -> ThemeColors.error();
            case MIND -> ThemeColors.warning();
            case NOTE -> ThemeColors.secondaryText();
        };
    }

    private Shape outline() {
        return switch (severity) {
            case STOP -> polygon(5, 1, 11, 1, 15, 5, 15, 11, 11, 15, 5, 15, 1, 11, 1, 5);
            case MIND -> polygon(8, 1.5, 15, 14, 1, 14);
            case NOTE -> new Ellipse2D.Double(1.5, 1.5, 13, 13);
        };
    }

    private static Shape polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }

    @Override
    public int getIconWidth() {
        return UIScale.scale((int) SIZE_PX);
    }

    @Override
    public int getIconHeight() {
        return UIScale.scale((int) SIZE_PX);
    }
}
