package weltwright.app.gui.outline;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.MovableLandmark;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;

/**
 * Paints an outline, its landmarks and dimensions over a photo: light lines with a dark halo, visible on any colour.
 */
final class OutlinePainter {
    private static final Messages TEXTS = Messages.of(OutlinePainter.class);

    // Chosen by eye.
    private static final double STEP_MM = 0.25;
    private static final double DIMENSION_OFFSET_MM = 7;
    private static final double LEGEND_AWAY_PX = 12;

    private final Graphics2D g;
    private final Viewport viewport;
    private final int width;
    private final int height;
    private final MeasureUnit unit;

    /** @param unit of the dimensions */
    OutlinePainter(Graphics2D g, Viewport viewport, int widthPx, int heightPx, MeasureUnit unit) {
        this.unit = unit;
        this.g = g;
        this.viewport = viewport;
        this.width = widthPx;
        this.height = heightPx;
    }

    void paintOutline(Silhouette s) {
        Polyline outline = s.outline().sampled(STEP_MM);
        AnnotationPainter.paintWithHalo(g, toPx(outline), 1.6f, ThemeColors.handleOverlay());
        g.setColor(ThemeColors.edgeOverlay());
        g.draw(toPx(shorterStretch(outline, MovableLandmark.HEEL.of(s), MovableLandmark.TIP.of(s))));
        g.setColor(ThemeColors.spineOverlay());
        g.draw(toPx(shorterStretch(outline, MovableLandmark.SPINE.of(s), MovableLandmark.TIP.of(s))));
    }

    /** Paints a band under an uncertain stretch, and a label if it is the current one. */
    void paintUncertainStretch(Polyline stretch, boolean current) {
        Shape shape = toPx(stretch);
        Color uncertain = ThemeColors.uncertainOverlay();
        g.setColor(new Color(uncertain.getRed(), uncertain.getGreen(), uncertain.getBlue(), current ? 130 : 150));
        g.setStroke(AnnotationPainter.roundStroke(current ? 20 : 15));
        g.draw(shape);
        if (!current) {
            return;
        }
        Point middle = viewport.toPx(stretch.at(stretch.lengthMm() / 2));
        Point along = stretch.points()
                .get(stretch.points().size() - 1)
                .minus(stretch.points().get(0));
        // On the inner side, left of the outline: the landmarks' names are outside.
        Point in = along.norm() == 0 ? new Point(0, 1) : along.unit().left();
        double away = UIScale.scale(36f);
        paintLabel(
                TEXTS.text("outline-painter.not-sure"),
                middle.plus(new Point(in.x() * away, -in.y() * away)),
                ThemeColors.uncertainOverlay());
    }

    /** Paints a node: a square for a corner, a disc for a smooth node. */
    void paintNode(OutlineNode node, boolean selected) {
        Point px = viewport.toPx(node.at());
        double r = UIScale.scale(selected ? 6f : 4f);
        Shape mark = node.sharp()
                ? new Rectangle2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r)
                : new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        g.setColor(selected ? ThemeColors.handleOverlay() : Color.WHITE);
        g.fill(mark);
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.setColor(Color.BLACK);
        g.draw(mark);
    }

    void paintLandmark(MovableLandmark landmark, Silhouette s, boolean selected) {
        Point mm = landmark.of(s);
        Point px = viewport.toPx(mm);
        if (px.x() < 0 || px.y() < 0 || px.x() > width || px.y() > height) {
            return;
        }
        double r = UIScale.scale(selected ? 8f : 6f);
        Shape dot = new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        g.setColor(ThemeColors.landmarkFillOverlay());
        g.fill(dot);
        AnnotationPainter.paintWithHalo(g, dot, 2, selected ? ThemeColors.handleOverlay() : Color.WHITE);
        boolean above = mm.y()
                >= (MovableLandmark.HEEL.of(s).y() + MovableLandmark.SPINE.of(s).y()) / 2;
        FontMetrics metrics = g.getFontMetrics();
        int wide = metrics.stringWidth(landmark.words());
        double x = Math.max(4, Math.min(width - wide - 14, px.x() - wide / 2.0));
        // The guard's ends lie close to the heel and to each other, so each name has a row of its own.
        int row = landmark == MovableLandmark.GUARD_FRONT ? 1 : landmark == MovableLandmark.GUARD_BACK ? 2 : 0;
        double away = 14 + row * (metrics.getHeight() + 4);
        AnnotationPainter.paintLabel(
                g, landmark.words(), x, above ? px.y() - away - metrics.getHeight() : px.y() + away);
    }

    /** Paints a stroke, in another colour once it is complete. */
    void paintStroke(Polyline stroke, boolean drawing) {
        Shape shape = toPx(stroke);
        g.setColor(ThemeColors.haloOverlay());
        g.setStroke(AnnotationPainter.roundStroke(4));
        g.draw(shape);
        g.setColor(drawing ? Color.WHITE : ThemeColors.uncertainOverlay());
        float dash = UIScale.scale(5f);
        g.setStroke(new BasicStroke(
                UIScale.scale(2f), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {dash, dash}, 0));
        g.draw(shape);
    }

    /** Paints a caliper measure as a dimension line. */
    void paintCaliper(CaliperMeasure caliper, Silhouette s) {
        if (caliper.fromTipMm().isPresent()) {
            paintWidth(s, caliper.station(s), caliper.mm());
        } else {
            double low = s.outline().sampled(1).points().stream()
                    .mapToDouble(Point::y)
                    .min()
                    .orElseThrow();
            double y = low - DIMENSION_OFFSET_MM;
            paintDimension(
                    new Point(MovableLandmark.HEEL.of(s).x(), y),
                    new Point(MovableLandmark.TIP.of(s).x(), y),
                    unit.format(caliper.mm()));
        }
    }

    /** Paints a width at a station; nothing outside of the knife. */
    void paintWidth(Silhouette s, double x, double widthMm) {
        double[] ys = s.outline().sampled(STEP_MM).crossings(x);
        if (ys.length >= 2) {
            paintDimension(new Point(x, ys[0]), new Point(x, ys[ys.length - 1]), unit.format(widthMm));
        }
    }

    private void paintDimension(Point from, Point to, String text) {
        Point a = viewport.toPx(from);
        Point b = viewport.toPx(to);
        Point end = b.minus(a).unit().left().times(UIScale.scale(6f));
        for (boolean halo : new boolean[] {true, false}) {
            g.setColor(halo ? ThemeColors.haloOverlay() : ThemeColors.dimensionOverlay());
            g.setStroke(AnnotationPainter.roundStroke(halo ? 4 : 1.6f));
            paintLine(a, b);
            paintLine(a.minus(end), a.plus(end));
            paintLine(b.minus(end), b.plus(end));
        }
        paintLabel(text, a.towards(b, 0.5), ThemeColors.dimensionOverlay());
    }

    private void paintLine(Point a, Point b) {
        g.draw(new Line2D.Double(a.x(), a.y(), b.x(), b.y()));
    }

    private void paintLabel(String text, Point middle, Color color) {
        FontMetrics metrics = g.getFontMetrics();
        double x = middle.x() - metrics.stringWidth(text) / 2.0 - 5;
        AnnotationPainter.paintLabel(g, text, x, middle.y() - metrics.getHeight() / 2.0, color);
    }

    /**
     * Paints the meaning of the colours and a text on the accuracy, which may be empty.
     *
     * @param rulerPx width of the ruler at the left
     */
    void paintLegend(int rulerPx, String accuracy) {
        double y = height - g.getFontMetrics().getHeight() - 14.0;
        double x = rulerPx + LEGEND_AWAY_PX;
        x = AnnotationPainter.paintLabel(g, TEXTS.text("outline-painter.edge"), x, y, ThemeColors.edgeOverlay()) + 6;
        x = AnnotationPainter.paintLabel(g, TEXTS.text("outline-painter.spine"), x, y, ThemeColors.spineOverlay()) + 6;
        x = AnnotationPainter.paintLabel(g, TEXTS.text("outline-painter.handle"), x, y, ThemeColors.handleOverlay())
                + 18;
        if (!accuracy.isEmpty()) {
            AnnotationPainter.paintLabel(g, accuracy, x, y);
        }
    }

    private Shape toPx(Polyline line) {
        Path2D path = AnnotationPainter.path(line);
        return viewport.transform().createTransformedShape(path);
    }

    /** Returns the shorter of the two stretches between two points of a closed polyline. */
    private static Polyline shorterStretch(Polyline outline, Point from, Point to) {
        double a = outline.stationOf(from);
        double b = outline.stationOf(to);
        Polyline ahead = outline.stretch(a, b);
        return ahead.lengthMm() <= outline.lengthMm() / 2 ? ahead : outline.stretch(b, a);
    }
}
