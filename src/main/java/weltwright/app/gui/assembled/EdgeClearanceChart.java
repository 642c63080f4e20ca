package weltwright.app.gui.assembled;

import com.formdev.flatlaf.util.UIScale;
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
import java.awt.geom.Rectangle2D;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.UIManager;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.RoundSteps;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.fit.DrawCheck;
import weltwright.message.Messages;
import weltwright.units.LengthUnit;
import weltwright.units.MeasureUnit;

/**
 * A chart of the distance from the edge to the nearest stitch (upwards) over the distance drawn (to the right), with
 * both axes in the unit chosen, and the least distance that is safe as a dashed line. Where the edge is nearer than
 * that, its line is thick and in the colour for errors.
 */
final class EdgeClearanceChart extends JComponent {
    // In px at 96 dpi, chosen by eye.
    private static final int HEIGHT_PX = 116;
    private static final int LEFT_PX = 44;
    private static final int RIGHT_PX = 12;
    private static final int TOP_PX = 20;
    private static final int BOTTOM_PX = 34;
    private static final int TICK_PX = 4;
    private static final int LEAST_TICK_GAP_PX = 22;
    private static final int LEAST_TICK_GAP_ACROSS_PX = 60;
    private static final double SAFE_MM = DrawCheck.SAFE_EDGE_TO_STITCH_MM;

    /** Greatest distance that is shown; chosen by eye. */
    private static final double MAX_MM = 4 * SAFE_MM;

    private static final float[] DASHES = {4, 4};

    private final transient TestDrawModel model;
    private final transient DisplayUnit displayUnit;
    private double topMm = 1;

    EdgeClearanceChart(TestDrawModel model, DisplayUnit displayUnit) {
        this.model = model;
        this.displayUnit = displayUnit;
        setPreferredSize(UIScale.scale(new Dimension(100, HEIGHT_PX)));
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
        g.setFont(UIManager.getFont("small.font"));
        double highest =
                steps.stream().mapToDouble(DrawCheck.Step::edgeToStitchMm).max().orElse(1);
        topMm = Math.min(1.1 * Math.max(highest, SAFE_MM), MAX_MM);
        paintAxes(g);
        paintSafe(g);
        paintLine(g, steps);
        paintNow(g);
        g.dispose();
    }

    private void paintAxes(Graphics2D g) {
        double unitMm = displayUnit.unit() == MeasureUnit.INCH ? LengthUnit.INCH.inMm() : 1;
        Messages texts = texts();
        String unit = texts.text(displayUnit.unit() == MeasureUnit.INCH ? "chart.inch" : "chart.mm");
        FontMetrics metrics = g.getFontMetrics();
        g.setColor(ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.roundStroke(0.7f));
        g.draw(new Line2D.Double(left(), top(), left(), bottom()));
        g.draw(new Line2D.Double(left(), bottom(), right(), bottom()));
        RoundSteps up = RoundSteps.of(topMm / unitMm, (int) ((bottom() - top()) / UIScale.scale(LEAST_TICK_GAP_PX)));
        for (double value : up.values()) {
            double y = y(value * unitMm);
            g.draw(new Line2D.Double(left() - UIScale.scale(TICK_PX), y, left(), y));
            String figure = up.format(value);
            g.drawString(figure, (float) (left() - 2 * UIScale.scale(TICK_PX) - metrics.stringWidth(figure)), (float)
                    (y + (metrics.getAscent() - metrics.getDescent()) / 2.0));
        }
        RoundSteps across = RoundSteps.of(
                model.travelMm() / unitMm, (int) ((right() - left()) / UIScale.scale(LEAST_TICK_GAP_ACROSS_PX)));
        for (double value : across.values()) {
            double x = x(value * unitMm);
            g.draw(new Line2D.Double(x, bottom(), x, bottom() + UIScale.scale(TICK_PX)));
            String figure = across.format(value);
            g.drawString(figure, (float) (x - metrics.stringWidth(figure) / 2.0), (float)
                    (bottom() + UIScale.scale(TICK_PX) + metrics.getAscent()));
        }
        g.drawString(texts.text("chart.title", unit), UIScale.scale(TICK_PX), metrics.getAscent());
        String drawn = texts.text("chart.drawn", unit);
        g.drawString(drawn, (float) (right() - metrics.stringWidth(drawn)), getHeight() - metrics.getDescent());
    }

    private void paintSafe(Graphics2D g) {
        g.setColor(ThemeColors.error());
        g.setStroke(new BasicStroke(UIScale.scale(1f), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        g.draw(new Line2D.Double(left(), y(SAFE_MM), right(), y(SAFE_MM)));
        String safe = texts().text("chart.safe", SAFE_MM);
        FontMetrics metrics = g.getFontMetrics();
        double x = right() - metrics.stringWidth(safe);
        g.drawString(safe, (float) x, metrics.getAscent());
    }

    private void paintLine(Graphics2D g, List<DrawCheck.Step> steps) {
        Shape whole = g.getClip();
        g.clip(new Rectangle2D.Double(left(), top(), right() - left(), bottom() - top()));
        for (int i = 0; i + 1 < steps.size(); i++) {
            DrawCheck.Step from = steps.get(i);
            DrawCheck.Step to = steps.get(i + 1);
            boolean near = Math.min(from.edgeToStitchMm(), to.edgeToStitchMm()) < SAFE_MM;
            g.setColor(near ? ThemeColors.error() : ThemeColors.knifeLine());
            g.setStroke(AnnotationPainter.roundStroke(near ? 4 : 2));
            Path2D piece = new Path2D.Double();
            piece.moveTo(x(from.drawnMm()), y(from.edgeToStitchMm()));
            piece.lineTo(x(to.drawnMm()), y(to.edgeToStitchMm()));
            g.draw(piece);
        }
        g.setClip(whole);
    }

    private void paintNow(Graphics2D g) {
        double now = x(model.drawnMm());
        g.setColor(ThemeColors.text());
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.draw(new Line2D.Double(now, top(), now, bottom()));
        double r = UIScale.scale(4f);
        model.nearestStep()
                .filter(step -> step.edgeToStitchMm() <= topMm)
                .ifPresent(step -> g.fill(new Ellipse2D.Double(now - r, y(step.edgeToStitchMm()) - r, 2 * r, 2 * r)));
    }

    private Messages texts() {
        return Messages.of(EdgeClearanceChart.class).withUnit(displayUnit.unit());
    }

    private static double left() {
        return UIScale.scale(LEFT_PX);
    }

    private double right() {
        return getWidth() - UIScale.scale(RIGHT_PX);
    }

    private static double top() {
        return UIScale.scale(TOP_PX);
    }

    private double bottom() {
        return getHeight() - UIScale.scale(BOTTOM_PX);
    }

    private double x(double drawnMm) {
        return left() + (right() - left()) * drawnMm / model.travelMm();
    }

    private double y(double mm) {
        return bottom() - (bottom() - top()) * mm / topMm;
    }
}
