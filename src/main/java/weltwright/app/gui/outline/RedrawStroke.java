package weltwright.app.gui.outline;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A line drawn beside the knife's edge, by hand or along the outline itself. It is to be seen until the outline runs
 * along the edge near it, or cannot. On the event thread.
 */
final class RedrawStroke {
    /** What is shorter was a click. */
    static final double LEAST_MM = 3;

    private static final double LEAST_REACH_MM = 0.5;
    private static final double MOST_REACH_MM = 3;

    private final StretchRedrawer redrawing;
    private final Runnable repaint;
    private List<Point> points = List.of();
    private boolean drawing;

    RedrawStroke(StretchRedrawer redrawing, Runnable repaint) {
        this.redrawing = redrawing;
        this.repaint = repaint;
    }

    /** Whether a hand is at it. */
    boolean drawing() {
        return drawing;
    }

    void begin(Point mm) {
        points = new ArrayList<>(List.of(mm));
        drawing = true;
    }

    void add(Point mm) {
        points.add(mm);
    }

    void drop() {
        points = List.of();
        drawing = false;
    }

    /** @param reachMm how near a hand comes to what it aims at */
    void letGo(double reachMm) {
        List<Point> drawn = List.copyOf(points);
        drop();
        if (drawn.size() > 1 && Polyline.open(drawn).lengthMm() >= LEAST_MM) {
            send(Polyline.open(drawn), Math.max(LEAST_REACH_MM, Math.min(MOST_REACH_MM, reachMm)));
        }
    }

    /** Has the outline run along the edge that is no farther than so from a line. */
    void send(Polyline along, double reachMm) {
        points = along.points();
        repaint.run();
        redrawing.along(along, reachMm, () -> {
            if (!drawing) {
                points = List.of();
            }
            repaint.run();
        });
    }

    void paint(OutlinePainter ink) {
        if (points.size() > 1) {
            ink.stroke(Polyline.open(points), drawing);
        }
    }
}
