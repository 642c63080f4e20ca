package weltwright.app.gui.assembled;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.job.SheathDesign;
import weltwright.sheath.planform.SectionLeather;
import weltwright.sheath.planform.SheathSection;

/** Paints a cross-section of a knife, or of a sewn sheath with the knife in it: y to the right, z up. */
public final class SheathSectionPainter {
    private static final float[] DASHES = {3, 3};

    private final Graphics2D g;
    private final Viewport viewport;
    private final AffineTransform toPx;

    public SheathSectionPainter(Graphics2D g, Viewport viewport) {
        this.g = g;
        this.viewport = viewport;
        toPx = viewport.transform();
    }

    /** Returns y of the sheath's outer edge on the edge side and on the spine side. */
    public static double[] outerEdges(SheathDesign design, SheathSection section) {
        double[] ys = design.plan().outline().crossings(section.xMm());
        double first = section.stitches().get(0);
        double last = section.stitches().get(section.stitches().size() - 1);
        return ys.length == 0 ? new double[] {first, last} : new double[] {ys[0], ys[ys.length - 1]};
    }

    /** Paints the section of a knife alone. */
    public void paintKnife(List<Point> boundary) {
        fill(AnnotationPainter.path(Polyline.closed(boundary)), ThemeColors.steel(), ThemeColors.knifeLine());
    }

    /**
     * Paints leather, welt, thread and knife.
     *
     * @param outer as {@link #outerEdges} returns them
     */
    public void paintLayers(SheathSection section, double[] outer) {
        List<Polyline> leather = SectionLeather.of(section, outer[0], outer[1]);
        fill(interior(section), ThemeColors.cavity(), null);
        section.welt()
                .forEach(layer -> fill(
                        new Rectangle2D.Double(
                                layer.fromY(), layer.fromZ(), layer.toY() - layer.fromY(), layer.toZ() - layer.fromZ()),
                        ThemeColors.welt(),
                        ThemeColors.cutLine()));
        leather.forEach(chain -> fill(AnnotationPainter.path(chain), ThemeColors.leather(), ThemeColors.cutLine()));
        if (!section.rivetCover().isEmpty()) {
            Path2D cover = AnnotationPainter.path(Polyline.closed(section.rivetCover()));
            fill(cover, ThemeColors.leather(), ThemeColors.cutLine());
        }
        Path2D knife = AnnotationPainter.path(Polyline.closed(section.knife().boundary()));
        knife.transform(AffineTransform.getTranslateInstance(0, section.knifeLiftMm()));
        g.setColor(ThemeColors.markLine());
        g.setStroke(new BasicStroke(1, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        g.draw(toPx.createTransformedShape(AnnotationPainter.path(Polyline.closed(section.room()))));
        fill(knife, ThemeColors.steel(), ThemeColors.knifeLine());
        for (double stitch : section.stitches()) {
            paintStitch(stitch, section);
        }
    }

    /** Returns the area between face and back. */
    private static Shape interior(SheathSection section) {
        Path2D fillColor = new Path2D.Double();
        List<Point> face = section.face();
        fillColor.moveTo(face.get(0).x(), face.get(0).y());
        face.stream().skip(1).forEach(p -> fillColor.lineTo(p.x(), p.y()));
        for (int i = section.back().size() - 1; i >= 0; i--) {
            fillColor.lineTo(section.back().get(i).x(), section.back().get(i).y());
        }
        fillColor.closePath();
        return fillColor;
    }

    /** Paints the thread through all layers, and its ends on both sides. */
    private void paintStitch(double y, SheathSection section) {
        int end = y == section.stitches().get(0) ? 0 : section.face().size() - 1;
        double top = section.face().get(end).y() + section.leatherMm();
        double bottom =
                section.back().get(end == 0 ? 0 : section.back().size() - 1).y() - section.leatherMm();
        Point upper = viewport.toPx(new Point(y, top));
        Point lower = viewport.toPx(new Point(y, bottom));
        g.setColor(ThemeColors.thread());
        g.setStroke(AnnotationPainter.roundStroke(2.6f));
        g.draw(new Line2D.Double(upper.x(), upper.y(), lower.x(), lower.y()));
        for (Point p : List.of(upper, lower)) {
            g.draw(new Line2D.Double(p.x() - 5, p.y(), p.x() + 5, p.y()));
        }
    }

    private void fill(Shape mm, Color fillColor, @Nullable Color lineColor) {
        Shape px = toPx.createTransformedShape(mm);
        g.setColor(fillColor);
        g.fill(px);
        if (lineColor != null) {
            g.setColor(lineColor);
            g.setStroke(AnnotationPainter.roundStroke(1));
            g.draw(px);
        }
    }
}
