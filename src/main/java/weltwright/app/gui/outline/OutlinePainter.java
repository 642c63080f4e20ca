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
import weltwright.units.Length;

/** Paints an outline and what belongs to it over a photo of any colour: light lines with a dark rim. */
final class OutlinePainter {
    private static final double STEP_MM = 0.25;
    private static final double BELOW_MM = 7;

    private final Graphics2D g;
    private final Viewport at;
    private final int width;
    private final int height;

    OutlinePainter(Graphics2D g, Viewport at, int widthPx, int heightPx) {
        this.g = g;
        this.at = at;
        this.width = widthPx;
        this.height = heightPx;
    }

    void outline(Silhouette s) {
        Polyline outline = s.outline().sampled(STEP_MM);
        AnnotationPainter.drawRimmed(g, shape(outline), 1.6f, ThemeColors.handleOverlay());
        g.setColor(ThemeColors.edgeOverlay());
        g.draw(shape(shorter(outline, MovableLandmark.HEEL.of(s), MovableLandmark.TIP.of(s))));
        g.setColor(ThemeColors.spineOverlay());
        g.draw(shape(shorter(outline, MovableLandmark.SPINE.of(s), MovableLandmark.TIP.of(s))));
    }

    /** A band under the outline where the edge was weak; {@code present} is the one that is being looked at. */
    void unsure(Polyline stretch, boolean present) {
        Shape shape = shape(stretch);
        Color uncertain = ThemeColors.uncertainOverlay();
        g.setColor(new Color(uncertain.getRed(), uncertain.getGreen(), uncertain.getBlue(), present ? 130 : 150));
        g.setStroke(AnnotationPainter.pen(present ? 20 : 15));
        g.draw(shape);
        if (!present) {
            return;
        }
        Point middle = at.toPx(stretch.at(stretch.lengthMm() / 2));
        Point along = stretch.points()
                .get(stretch.points().size() - 1)
                .minus(stretch.points().get(0));
        // On the knife, which is on the left of its outline: outside stand the names of the marks.
        Point in = along.norm() == 0 ? new Point(0, 1) : along.unit().left();
        double away = UIScale.scale(36f);
        label("not sure", middle.plus(new Point(in.x() * away, -in.y() * away)), ThemeColors.uncertainOverlay());
    }

    /** Corners are square, smooth points round. */
    void node(OutlineNode node, boolean held) {
        Point px = at.toPx(node.at());
        double r = UIScale.scale(held ? 6f : 4f);
        Shape mark = node.sharp()
                ? new Rectangle2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r)
                : new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        g.setColor(held ? ThemeColors.handleOverlay() : Color.WHITE);
        g.fill(mark);
        g.setStroke(AnnotationPainter.pen(1));
        g.setColor(Color.BLACK);
        g.draw(mark);
    }

    void place(MovableLandmark place, Silhouette s, boolean held) {
        Point mm = place.of(s);
        Point px = at.toPx(mm);
        if (px.x() < 0 || px.y() < 0 || px.x() > width || px.y() > height) {
            return;
        }
        double r = UIScale.scale(held ? 8f : 6f);
        Shape dot = new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        g.setColor(ThemeColors.landmarkFillOverlay());
        g.fill(dot);
        AnnotationPainter.drawRimmed(g, dot, 2, held ? ThemeColors.handleOverlay() : Color.WHITE);
        boolean above = mm.y()
                >= (MovableLandmark.HEEL.of(s).y() + MovableLandmark.SPINE.of(s).y()) / 2;
        FontMetrics metrics = g.getFontMetrics();
        int wide = metrics.stringWidth(place.words());
        double x = Math.max(4, Math.min(width - wide - 14, px.x() - wide / 2.0));
        // A guard's ends lie next to the heel and to each other: each name on a line of its own.
        int row = place == MovableLandmark.GUARD_FRONT ? 1 : place == MovableLandmark.GUARD_BACK ? 2 : 0;
        double away = 14 + row * (metrics.getHeight() + 4);
        AnnotationPainter.plate(g, place.words(), x, above ? px.y() - away - metrics.getHeight() : px.y() + away);
    }

    /** A stroke of the hand; paler once it is drawn and being followed. */
    void stroke(Polyline stroke, boolean drawing) {
        Shape shape = shape(stroke);
        g.setColor(ThemeColors.haloOverlay());
        g.setStroke(AnnotationPainter.pen(4));
        g.draw(shape);
        g.setColor(drawing ? Color.WHITE : ThemeColors.uncertainOverlay());
        float dash = UIScale.scale(5f);
        g.setStroke(new BasicStroke(
                UIScale.scale(2f), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {dash, dash}, 0));
        g.draw(shape);
    }

    /** A measure taken on the knife, as a drawing shows it. */
    void caliper(CaliperMeasure caliper, Silhouette s) {
        if (caliper.fromTipMm().isPresent()) {
            across(s, caliper.station(s), new Length(caliper.mm()).inMillimetres());
        } else {
            double low = s.outline().sampled(1).points().stream()
                    .mapToDouble(Point::y)
                    .min()
                    .orElseThrow();
            double y = low - BELOW_MM;
            measure(
                    new Point(MovableLandmark.HEEL.of(s).x(), y),
                    new Point(MovableLandmark.TIP.of(s).x(), y),
                    new Length(caliper.mm()).inMillimetres());
        }
    }

    /** The width at a place; nothing where the knife does not reach to it. */
    void across(Silhouette s, double x, String words) {
        double[] ys = s.outline().sampled(STEP_MM).crossings(x);
        if (ys.length >= 2) {
            measure(new Point(x, ys[0]), new Point(x, ys[ys.length - 1]), words);
        }
    }

    private void measure(Point from, Point to, String words) {
        Point a = at.toPx(from);
        Point b = at.toPx(to);
        Point end = b.minus(a).unit().left().times(UIScale.scale(6f));
        for (boolean rim : new boolean[] {true, false}) {
            g.setColor(rim ? ThemeColors.haloOverlay() : ThemeColors.dimensionOverlay());
            g.setStroke(AnnotationPainter.pen(rim ? 4 : 1.6f));
            line(a, b);
            line(a.minus(end), a.plus(end));
            line(b.minus(end), b.plus(end));
        }
        label(words, a.towards(b, 0.5), ThemeColors.dimensionOverlay());
    }

    private void line(Point a, Point b) {
        g.draw(new Line2D.Double(a.x(), a.y(), b.x(), b.y()));
    }

    private void label(String words, Point middle, Color colour) {
        FontMetrics metrics = g.getFontMetrics();
        double x = middle.x() - metrics.stringWidth(words) / 2.0 - 5;
        AnnotationPainter.plate(g, words, x, middle.y() - metrics.getHeight() / 2.0, colour);
    }

    /** @param told what else there is to know of the outline; may be empty */
    void legend(String told) {
        double y = height - g.getFontMetrics().getHeight() - 14.0;
        double x = 12;
        x = AnnotationPainter.plate(g, "edge", x, y, ThemeColors.edgeOverlay()) + 6;
        x = AnnotationPainter.plate(g, "spine", x, y, ThemeColors.spineOverlay()) + 6;
        x = AnnotationPainter.plate(g, "handle", x, y, ThemeColors.handleOverlay()) + 18;
        if (!told.isEmpty()) {
            AnnotationPainter.plate(g, told, x, y);
        }
    }

    private Shape shape(Polyline line) {
        Path2D path = AnnotationPainter.path(line);
        return at.transform().createTransformedShape(path);
    }

    /** The shorter way round from one point of a closed chain to another. */
    private static Polyline shorter(Polyline outline, Point from, Point to) {
        double a = outline.stationOf(from);
        double b = outline.stationOf(to);
        Polyline ahead = outline.stretch(a, b);
        return ahead.lengthMm() <= outline.lengthMm() / 2 ? ahead : outline.stretch(b, a);
    }
}
