package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A stroke of one of two brushes, which mark what is knife and what is not. Paints the stroke and the marks that are
 * left of it. Points are in mm of the drawing.
 */
public final class MarkStroke {
    // Chosen by eye.
    private static final float BRUSH_PX = 12;
    private static final int BRUSH_ALPHA = 120;
    private static final float MARK_ARM_PX = 4;

    private final List<Point> points = new ArrayList<>();
    private boolean knife;
    private boolean drawing;

    public boolean isDrawing() {
        return drawing;
    }

    /** Returns whether the stroke marks what is knife. */
    public boolean isKnife() {
        return knife;
    }

    /**
     * Begins a stroke.
     *
     * @param newKnife whether it marks what is knife
     */
    public void begin(Point mm, boolean newKnife) {
        points.clear();
        points.add(mm);
        knife = newKnife;
        drawing = true;
    }

    public void add(Point mm) {
        points.add(mm);
    }

    /**
     * Ends the stroke and removes it.
     *
     * @param spacingMm greatest distance along the stroke
     * @return points along it at equal distances, with both ends; its first point where it is shorter than one
     */
    public List<Point> finish(double spacingMm) {
        List<Point> drawn = List.copyOf(points);
        clear();
        double lengthMm = drawn.size() < 2 ? 0 : Polyline.open(drawn).lengthMm();
        if (lengthMm < spacingMm) {
            return drawn.subList(0, 1);
        }
        Polyline line = Polyline.open(drawn);
        int steps = (int) Math.ceil(lengthMm / spacingMm);
        List<Point> spaced = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            spaced.add(line.at(i * lengthMm / steps));
        }
        return spaced;
    }

    /** Removes the stroke. */
    public void clear() {
        points.clear();
        drawing = false;
    }

    /** Paints the stroke. */
    public void paint(Graphics2D g, Viewport viewport) {
        if (points.size() > 1) {
            Color color = color(knife);
            g.setColor(new Color(color.getRed(), color.getGreen(), color.getBlue(), BRUSH_ALPHA));
            g.setStroke(AnnotationPainter.roundStroke(BRUSH_PX));
            g.draw(viewport.transform().createTransformedShape(AnnotationPainter.path(Polyline.open(points))));
        }
    }

    /** Paints a mark: a plus on what is knife, a minus on what is not. */
    public static void paintMark(Graphics2D g, Viewport viewport, Point mm, boolean knife) {
        Point px = viewport.toPx(mm);
        double arm = UIScale.scale(MARK_ARM_PX);
        Path2D sign = new Path2D.Double();
        sign.moveTo(px.x() - arm, px.y());
        sign.lineTo(px.x() + arm, px.y());
        if (knife) {
            sign.moveTo(px.x(), px.y() - arm);
            sign.lineTo(px.x(), px.y() + arm);
        }
        AnnotationPainter.paintWithHalo(g, sign, 2, color(knife));
    }

    private static Color color(boolean knife) {
        return knife ? ThemeColors.dimensionOverlay() : ThemeColors.uncertainOverlay();
    }
}
