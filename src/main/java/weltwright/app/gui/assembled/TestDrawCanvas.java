package weltwright.app.gui.assembled;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;

/** The sheath from its face, and the knife as far out of it as it is drawn; it can be drawn with the mouse too. */
final class TestDrawCanvas extends DrawingCanvas {
    private static final double ROUND_MM = 6;

    private final TestDrawModel draw;
    private final DisplayUnit ruler;
    private double grabbedAt;

    TestDrawCanvas(TestDrawModel draw, DisplayUnit ruler) {
        this.draw = draw;
        this.ruler = ruler;
        setName("test draw drawing");
        getAccessibleContext().setAccessibleName("Test draw: the knife on its way out of the sheath");
        onKey("LEFT", () -> draw.move(draw.drawnMm() + 1));
        onKey("RIGHT", () -> draw.move(draw.drawnMm() - 1));
        onKey("shift LEFT", () -> draw.move(draw.drawnMm() + 10));
        onKey("shift RIGHT", () -> draw.move(draw.drawnMm() - 10));
        onKey("HOME", () -> draw.move(0));
        onKey("END", () -> draw.move(draw.wayMm()));
        draw.watch(this::repaint);
        ruler.watch(this::repaint);
    }

    /** To be called when knife or sheath are others. */
    void reshaped() {
        changed();
    }

    /** The knife at rest and drawn, and the sheath. */
    @Override
    protected Optional<Rectangle2D> extent() {
        return draw.fitted().map(f -> {
            Rectangle2D all = AnnotationPainter.path(f.plan().outline()).getBounds2D();
            for (double drawn : new double[] {0, draw.wayMm()}) {
                RigidMotion there = f.pattern().drawCheck().path().drawn(drawn);
                all = all.createUnion(
                        AnnotationPainter.path(f.knife().outline().sampled(2).map(there::apply))
                                .getBounds2D());
            }
            return new Rectangle2D.Double(
                    all.getX() - ROUND_MM,
                    all.getY() - ROUND_MM,
                    all.getWidth() + 2 * ROUND_MM,
                    all.getHeight() + 2 * ROUND_MM);
        });
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        draw.fitted().ifPresent(f -> {
            SheathPlanPainter ink = new SheathPlanPainter(g, at);
            RigidMotion there = draw.placement();
            DrawCheck check = f.pattern().drawCheck();
            ink.leather(f.plan());
            ink.knife(f.knife().outline(), there);
            Retention grip = check.grip();
            grip.narrows().forEach(narrow -> ink.narrow(narrow, grip, there));
            ink.stitches(f.plan());
            draw.step()
                    .ifPresent(step -> ink.nearest(
                            step.edge(),
                            step.stitch(),
                            ruler.said(step.edgeToStitchMm()),
                            step.edgeToStitchMm() >= DrawCheck.SAFE_EDGE_TO_STITCH_MM));
            grip.narrows().forEach(narrow -> ink.narrowWords(narrow, there, said(narrow, grip)));
        });
    }

    private String said(Retention.Narrow narrow, Retention grip) {
        String by = ruler.said(narrow.byMm());
        return grip.isOpen(narrow)
                ? "kept open by " + by
                : grip.isGripped(narrow) ? "gripped, gives " + by : "gives " + by;
    }

    @Override
    protected boolean grab(Point mm, double reachMm) {
        grabbedAt = draw.drawnMm() + mm.x();
        return over(mm, reachMm);
    }

    @Override
    protected void drag(Point mm) {
        draw.move(grabbedAt - mm.x());
    }

    @Override
    protected boolean over(Point mm, double reachMm) {
        return draw.fitted()
                .filter(f -> AnnotationPainter.path(
                                f.knife().outline().sampled(1).map(draw.placement()::apply))
                        .contains(mm.x(), mm.y()))
                .isPresent();
    }
}
