package weltwright.app.gui.outline;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A stroke along which the outline is redrawn: drawn with the mouse, or a stretch of the outline itself. It is painted
 * until the redrawing ends. Used on the event thread.
 */
final class RedrawStroke {
    /** A shorter stroke counts as a click; chosen by eye. */
    static final double MIN_LENGTH_MM = 3;

    /** Limits of the distance between stroke and edge, whatever the zoom; chosen by eye. */
    private static final double MIN_DISTANCE_MM = 0.5;

    private static final double MAX_DISTANCE_MM = 3;

    private final StretchRedrawer redrawer;
    private final Runnable repaint;
    private List<Point> points = List.of();
    private boolean drawing;

    RedrawStroke(StretchRedrawer redrawer, Runnable repaint) {
        this.redrawer = redrawer;
        this.repaint = repaint;
    }

    /** Returns whether it is being drawn with the mouse. */
    boolean isDrawing() {
        return drawing;
    }

    void begin(Point mm) {
        points = new ArrayList<>(List.of(mm));
        drawing = true;
    }

    void add(Point mm) {
        points.add(mm);
    }

    void clear() {
        points = List.of();
        drawing = false;
    }

    /**
     * Ends the stroke and redraws the outline along it.
     *
     * @param maxDistanceMm between stroke and edge, at the present zoom
     */
    void finish(double maxDistanceMm) {
        List<Point> drawn = List.copyOf(points);
        clear();
        if (drawn.size() > 1 && Polyline.open(drawn).lengthMm() >= MIN_LENGTH_MM) {
            redrawAlong(Polyline.open(drawn), Math.max(MIN_DISTANCE_MM, Math.min(MAX_DISTANCE_MM, maxDistanceMm)));
        }
    }

    /** Redraws the outline along the edge that is at most {@code maxDistanceMm} from a line. */
    void redrawAlong(Polyline line, double maxDistanceMm) {
        points = line.points();
        repaint.run();
        redrawer.redrawAlong(line, maxDistanceMm, () -> {
            if (!drawing) {
                points = List.of();
            }
            repaint.run();
        });
    }

    void paint(OutlinePainter painter) {
        if (points.size() > 1) {
            painter.paintStroke(Polyline.open(points), drawing);
        }
    }
}
