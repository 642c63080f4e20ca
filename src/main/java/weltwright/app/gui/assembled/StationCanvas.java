package weltwright.app.gui.assembled;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.fit.Retention;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.job.SheathDesign;

/** The sheath from its face with the knife in it, and across them the line at which both are cut through. */
public final class StationCanvas extends DrawingCanvas {
    private static final RigidMotion AT_REST = new RigidMotion(0, new Point(0, 0));
    private static final double ROUND_MM = 6;

    private final StationModel station;
    private final DisplayUnit ruler;
    private Optional<SheathDesign> fitted = Optional.empty();

    StationCanvas(StationModel station, DisplayUnit ruler) {
        this.station = station;
        this.ruler = ruler;
        setName("station drawing");
        getAccessibleContext().setAccessibleName("Where the sheath is cut through; the arrows move the place");
        station.keys(this);
        station.watch(this::repaint);
        ruler.watch(this::repaint);
    }

    void show(Optional<SheathDesign> now) {
        fitted = now;
        changed();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return sheath().map(box -> new Rectangle2D.Double(
                box.getX() - ROUND_MM,
                box.getY() - ROUND_MM,
                box.getWidth() + 2 * ROUND_MM,
                box.getHeight() + 2 * ROUND_MM));
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        fitted.ifPresent(f -> {
            SheathPlanPainter ink = new SheathPlanPainter(g, at);
            ink.leather(f.plan());
            ink.knife(f.knife().outline(), AT_REST);
            Retention grip = f.pattern().drawCheck().grip();
            grip.narrows().forEach(narrow -> ink.narrow(narrow, grip, AT_REST));
            ink.stitches(f.plan());
            ink.station(sheath().orElseThrow(), station.xMm(), ruler.said(station.fromThroatMm()) + " from the throat");
        });
    }

    /** Wherever over the sheath the mouse is pressed, there it is cut. */
    @Override
    protected boolean grab(Point mm, double reachMm) {
        boolean there = over(mm, reachMm);
        if (there) {
            station.move(mm.x());
        }
        return there;
    }

    @Override
    protected void drag(Point mm) {
        station.move(mm.x());
    }

    @Override
    protected boolean over(Point mm, double reachMm) {
        return sheath().filter(box -> mm.x() > box.getMinX() - reachMm
                        && mm.x() < box.getMaxX() + reachMm
                        && mm.y() > box.getMinY() - 2 * reachMm
                        && mm.y() < box.getMaxY() + 2 * reachMm)
                .isPresent();
    }

    private Optional<Rectangle2D> sheath() {
        return fitted.map(f -> AnnotationPainter.path(f.plan().outline()).getBounds2D());
    }
}
