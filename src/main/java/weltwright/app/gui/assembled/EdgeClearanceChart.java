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
 * A chart of the distance from the edge to the nearest stitch over the draw, from the knife at rest at the left to the
 * knife drawn at the right.
 */
final class EdgeClearanceChart extends JComponent {
    private static final int HEIGHT_PX = 76;
    private static final int MARGIN_PX = 12;
    private static final int TOP_PX = 18;
    private static final double SAFE_MM = DrawCheck.SAFE_EDGE_TO_STITCH_MM;

    /** Greatest distance that is shown; chosen by eye. */
    private static final double MAX_MM = 4 * SAFE_MM;

    private static final float[] DASHES = {4, 4};

    private final transient TestDrawModel model;
    private final transient DisplayUnit displayUnit;

    EdgeClearanceChart(TestDrawModel model, DisplayUnit displayUnit) {
        this.model = model;
        this.displayUnit = displayUnit;
        setPreferredSize(new Dimension(100, HEIGHT_PX));
        setName("draw graph");
        model.addListener(this::repaint);
        displayUnit.addListener(this::repaint);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        List<DrawCheck.Step> steps = model.check().map(DrawCheck::steps).orElse(List.of());
        if (steps.isEmpty()) {
            return;
        }
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        double highest =
                steps.stream().mapToDouble(DrawCheck.Step::edgeToStitchMm).max().orElse(1);
        double top = Math.min(1.1 * Math.max(highest, SAFE_MM), MAX_MM);
        double safe = y(SAFE_MM, top);
        g.setColor(ThemeColors.error());
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        g.draw(new Line2D.Double(MARGIN_PX, safe, getWidth() - MARGIN_PX, safe));
        Path2D line = new Path2D.Double();
        line.moveTo(x(steps.get(0).drawnMm()), y(steps.get(0).edgeToStitchMm(), top));
        steps.stream().skip(1).forEach(step -> line.lineTo(x(step.drawnMm()), y(step.edgeToStitchMm(), top)));
        g.setColor(ThemeColors.knifeLine());
        g.setStroke(AnnotationPainter.roundStroke(2));
        Shape whole = g.getClip();
        g.clipRect(0, TOP_PX, getWidth(), getHeight() - TOP_PX);
        g.draw(line);
        g.setClip(whole);
        g.setColor(ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.roundStroke(0.7f));
        g.draw(new Line2D.Double(MARGIN_PX, getHeight() - 1.0, getWidth() - MARGIN_PX, getHeight() - 1.0));
        double now = x(model.drawnMm());
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.draw(new Line2D.Double(now, TOP_PX, now, getHeight()));
        model.nearestStep()
                .filter(step -> step.edgeToStitchMm() <= top)
                .ifPresent(step -> g.fill(new Ellipse2D.Double(now - 4, y(step.edgeToStitchMm(), top) - 4, 8, 8)));
        FontMetrics metrics = g.getFontMetrics();
        g.setColor(ThemeColors.secondaryText());
        String what = "Edge to stitch during the draw";
        g.drawString(what, MARGIN_PX, metrics.getAscent());
        String least = "red line: " + displayUnit.format(SAFE_MM) + ", the least that is safe";
        int leastX = getWidth() - MARGIN_PX - metrics.stringWidth(least);
        if (leastX > 2 * MARGIN_PX + metrics.stringWidth(what)) {
            g.drawString(least, leastX, metrics.getAscent());
        }
        g.dispose();
    }

    private double x(double drawnMm) {
        return MARGIN_PX + (getWidth() - 2.0 * MARGIN_PX) * drawnMm / model.travelMm();
    }

    private double y(double mm, double topMm) {
        return getHeight() - 1 - (getHeight() - 1.0 - TOP_PX) * mm / topMm;
    }
}
