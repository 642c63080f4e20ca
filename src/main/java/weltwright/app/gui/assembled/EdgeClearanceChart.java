package weltwright.app.gui.assembled;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.List;
import javax.swing.JComponent;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.fit.DrawCheck;

/**
 * How far the edge is from the nearest stitch, over the whole draw: from knife in at the left to knife out at the
 * right.
 */
final class EdgeClearanceChart extends JComponent {
    private static final int HEIGHT = 76;
    private static final int ASIDE = 12;
    private static final int TOP = 18;
    private static final double SAFE_MM = DrawCheck.SAFE_EDGE_TO_STITCH_MM;

    /** What is farther off is out of danger, and out of the picture. */
    private static final double MOST_MM = 4 * SAFE_MM;

    private static final float[] DASHES = {4, 4};

    private final transient TestDrawModel draw;
    private final transient DisplayUnit ruler;

    EdgeClearanceChart(TestDrawModel draw, DisplayUnit ruler) {
        this.draw = draw;
        this.ruler = ruler;
        setPreferredSize(new Dimension(100, HEIGHT));
        setName("draw graph");
        draw.watch(this::repaint);
        ruler.watch(this::repaint);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        List<DrawCheck.Step> steps = draw.check().map(DrawCheck::steps).orElse(List.of());
        if (steps.isEmpty()) {
            return;
        }
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        double highest =
                steps.stream().mapToDouble(DrawCheck.Step::edgeToStitchMm).max().orElse(1);
        double top = Math.min(1.1 * Math.max(highest, SAFE_MM), MOST_MM);
        double safe = y(SAFE_MM, top);
        g.setColor(ThemeColors.error());
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        g.draw(new Line2D.Double(ASIDE, safe, getWidth() - ASIDE, safe));
        Path2D line = new Path2D.Double();
        line.moveTo(x(steps.get(0).drawnMm()), y(steps.get(0).edgeToStitchMm(), top));
        steps.stream().skip(1).forEach(step -> line.lineTo(x(step.drawnMm()), y(step.edgeToStitchMm(), top)));
        g.setColor(ThemeColors.knifeLine());
        g.setStroke(AnnotationPainter.pen(2));
        Shape whole = g.getClip();
        g.clipRect(0, TOP, getWidth(), getHeight() - TOP);
        g.draw(line);
        g.setClip(whole);
        g.setColor(ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.pen(0.7f));
        g.draw(new Line2D.Double(ASIDE, getHeight() - 1.0, getWidth() - ASIDE, getHeight() - 1.0));
        double now = x(draw.drawnMm());
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.pen(1));
        g.draw(new Line2D.Double(now, TOP, now, getHeight()));
        draw.step()
                .filter(step -> step.edgeToStitchMm() <= top)
                .ifPresent(step -> g.fill(new Ellipse2D.Double(now - 4, y(step.edgeToStitchMm(), top) - 4, 8, 8)));
        FontMetrics metrics = g.getFontMetrics();
        g.setColor(ThemeColors.secondaryText());
        String what = "Edge to stitch during the draw";
        g.drawString(what, ASIDE, metrics.getAscent());
        String least = "red line: " + ruler.said(SAFE_MM) + ", the least that is safe";
        int leastX = getWidth() - ASIDE - metrics.stringWidth(least);
        if (leastX > 2 * ASIDE + metrics.stringWidth(what)) {
            g.drawString(least, leastX, metrics.getAscent());
        }
        g.dispose();
    }

    private double x(double drawnMm) {
        return ASIDE + (getWidth() - 2.0 * ASIDE) * drawnMm / draw.wayMm();
    }

    private double y(double mm, double topMm) {
        return getHeight() - 1 - (getHeight() - 1.0 - TOP) * mm / topMm;
    }
}
