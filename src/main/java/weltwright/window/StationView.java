package weltwright.window;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import weltwright.fit.Grip;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;

/** The sheath from its face with the knife in it, and across them the line at which both are cut through. */
final class StationView extends Drawing {
    private static final Placement AT_REST = new Placement(0, new Point(0, 0));
    private static final double ROUND_MM = 6;

    private final Station station;
    private final Ruler ruler;
    private Optional<Fitted> fitted = Optional.empty();

    StationView(Station station, Ruler ruler) {
        this.station = station;
        this.ruler = ruler;
        setName("station drawing");
        getAccessibleContext().setAccessibleName("Where the sheath is cut through; the arrows move the place");
        station.keys(this);
        station.watch(this::repaint);
        ruler.watch(this::repaint);
    }

    void show(Optional<Fitted> now) {
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
            PlanInk ink = new PlanInk(g, at);
            ink.leather(f.plan());
            ink.knife(f.knife().outline(), AT_REST);
            Grip grip = f.pattern().drawCheck().grip();
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
        return fitted.map(f -> Words.path(f.plan().outline()).getBounds2D());
    }
}
