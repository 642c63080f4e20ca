package weltwright.app.gui.home;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.job.Job;
import weltwright.job.SheathDesign;
import weltwright.sheath.planform.SewnPlanView;

/**
 * A small drawing of a job: the outline of the knife in its sheath.
 *
 * @param knife closed outline in the knife's frame, in mm
 * @param sheath seen from its face; empty where none can be made yet
 */
record SheathPicture(Polyline knife, Optional<SewnPlanView> sheath) {
    private static final double STEP_MM = 1.5;
    private static final int STEEL_ALPHA = 200;

    /** Computes the drawing, which takes about a second for a sheath; empty for a job without an outline. */
    static Optional<SheathPicture> of(Job job) {
        return job.silhouette()
                .map(silhouette -> new SheathPicture(silhouette.outline().sampled(STEP_MM), sheath(job)));
    }

    private static Optional<SewnPlanView> sheath(Job job) {
        try {
            return SheathDesign.Input.of(job).map(input -> input.design().plan());
        } catch (UserFacingException e) {
            return Optional.empty(); // no sheath can be made to the choices; the knife alone is drawn
        }
    }

    void paint(Graphics2D g, int x, int y, int width, int height) {
        AffineTransform before = g.getTransform();
        g.translate(x, y);
        Rectangle2D extent = AnnotationPainter.path(knife).getBounds2D();
        sheath.ifPresent(
                plan -> extent.add(AnnotationPainter.path(plan.outline()).getBounds2D()));
        Viewport viewport = Viewport.fit(extent, width, height, new Insets(4, 8, 4, 8));
        AffineTransform toPx = viewport.transform();
        sheath.ifPresent(plan -> {
            Shape leather = toPx.createTransformedShape(AnnotationPainter.path(plan.outline()));
            g.setColor(ThemeColors.leather());
            g.fill(leather);
            g.setColor(ThemeColors.cutLine());
            g.setStroke(AnnotationPainter.roundStroke(1.2f));
            g.draw(leather);
        });
        Color steel = ThemeColors.steel();
        Shape blade = toPx.createTransformedShape(AnnotationPainter.path(knife));
        g.setColor(new Color(steel.getRed(), steel.getGreen(), steel.getBlue(), STEEL_ALPHA));
        g.fill(blade);
        g.setColor(ThemeColors.knifeLine());
        g.setStroke(AnnotationPainter.roundStroke(1.2f));
        g.draw(blade);
        sheath.ifPresent(plan -> {
            g.setColor(ThemeColors.hole());
            for (Point stitch : plan.stitches()) {
                Point px = viewport.toPx(stitch);
                g.fill(new Ellipse2D.Double(px.x() - 0.75, px.y() - 0.75, 1.5, 1.5));
            }
        });
        g.setTransform(before);
    }
}
