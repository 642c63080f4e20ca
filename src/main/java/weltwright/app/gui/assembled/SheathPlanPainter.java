package weltwright.app.gui.assembled;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.sheath.planform.SewnPlanView;

/**
 * Paints a sewn sheath seen from its face, as if its leather could be seen through, and the knife in it or drawn from
 * it.
 */
final class SheathPlanPainter {
    private static final double STEP_MM = 0.5;
    private static final double STITCH_MM = 1.2;
    private static final double LEAST_STITCH_PX = 1.5;
    private static final int STEEL_ALPHA = 190;

    private final Graphics2D g;
    private final Viewport at;
    private final AffineTransform toPx;
    private final List<Rectangle2D> plates = new ArrayList<>();

    SheathPlanPainter(Graphics2D g, Viewport at) {
        this.g = g;
        this.at = at;
        toPx = at.transform();
    }

    void leather(SewnPlanView plan) {
        Shape sheath = toPx.createTransformedShape(AnnotationPainter.path(plan.outline()));
        g.setColor(ThemeColors.leather());
        g.fill(sheath);
        g.setColor(ThemeColors.cutLine());
        g.setStroke(AnnotationPainter.pen(1.6f));
        g.draw(sheath);
    }

    void stitches(SewnPlanView plan) {
        g.setColor(ThemeColors.hole());
        double r = Math.max(LEAST_STITCH_PX, STITCH_MM / 2 * at.pxPerMm());
        for (Point stitch : plan.stitches()) {
            Point px = at.toPx(stitch);
            g.fill(new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r));
        }
    }

    void knife(Outline outline, RigidMotion drawn) {
        Shape knife = toPx.createTransformedShape(
                AnnotationPainter.path(outline.sampled(STEP_MM).map(drawn::apply)));
        Color steel = ThemeColors.steel();
        g.setColor(new Color(steel.getRed(), steel.getGreen(), steel.getBlue(), STEEL_ALPHA));
        g.fill(knife);
        g.setColor(ThemeColors.knifeLine());
        g.setStroke(AnnotationPainter.pen(1.4f));
        g.draw(knife);
    }

    /** A stretch where the knife is narrower than what must pass: gripped, or loose. */
    void narrow(Retention.Narrow narrow, Retention grip, RigidMotion drawn) {
        g.setColor(
                grip.isGripped(narrow)
                        ? ThemeColors.success()
                        : grip.isOpen(narrow) ? ThemeColors.warning() : ThemeColors.secondaryText());
        g.setStroke(AnnotationPainter.pen(4));
        for (Retention.NarrowSide side : narrow.sides()) {
            g.draw(toPx.createTransformedShape(
                    AnnotationPainter.path(side.outline().map(drawn::apply))));
        }
    }

    /** Words at such a stretch, on the side away from the knife, and farther away where others stand already. */
    void narrowWords(Retention.Narrow narrow, RigidMotion drawn, String words) {
        narrow.sides().stream().findFirst().ifPresent(side -> {
            Polyline outline = side.outline();
            Point middle = at.toPx(drawn.apply(outline.at(outline.lengthMm() / 2)));
            boolean below = side.side() == DrawCheck.Side.EDGE;
            double left = middle.x() - g.getFontMetrics().stringWidth(words) / 2.0;
            plate(words, left, middle.y() + (below ? 10 : -28), below ? 1 : -1);
        });
    }

    /** A plate, moved up or down by whole heights until it covers no other. */
    private void plate(String words, double x, double y, int down) {
        double height = g.getFontMetrics().getHeight() + 6;
        Rectangle2D plate = new Rectangle2D.Double(x - 6, y, g.getFontMetrics().stringWidth(words) + 12, height);
        while (plates.stream().anyMatch(plate::intersects)) {
            plate.setRect(plate.getX(), plate.getY() + down * height, plate.getWidth(), height);
        }
        plates.add(plate);
        AnnotationPainter.plate(g, words, x, plate.getY());
    }

    /** From the edge to the stitch that is nearest to it. */
    void nearest(Point edge, Point stitch, String size, boolean safe) {
        Point a = at.toPx(edge);
        Point b = at.toPx(stitch);
        g.setColor(safe ? ThemeColors.text() : ThemeColors.error());
        g.setStroke(AnnotationPainter.pen(2));
        g.draw(new Line2D.Double(a.x(), a.y(), b.x(), b.y()));
        for (Point end : new Point[] {a, b}) {
            g.fill(new Ellipse2D.Double(end.x() - 3, end.y() - 3, 6, 6));
        }
        plate(size, b.x() + 8, b.y() + 6, 1);
    }

    /** The line along which the sheath is cut through, with something to take hold of at both ends. */
    void station(Rectangle2D sheath, double xMm, String words) {
        Point top = at.toPx(new Point(xMm, sheath.getMaxY()));
        Point bottom = at.toPx(new Point(xMm, sheath.getMinY()));
        double beyond = UIScale.scale(12f);
        g.setColor(ThemeColors.error());
        g.setStroke(AnnotationPainter.pen(2));
        g.draw(new Line2D.Double(top.x(), top.y() - beyond, bottom.x(), bottom.y() + beyond));
        double r = UIScale.scale(5f);
        g.fill(new Ellipse2D.Double(top.x() - r, top.y() - beyond - r, 2 * r, 2 * r));
        g.fill(new Ellipse2D.Double(bottom.x() - r, bottom.y() + beyond - r, 2 * r, 2 * r));
        AnnotationPainter.plate(g, words, top.x() + 10, top.y() - beyond - 10);
    }
}
