package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.Optional;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.units.MeasureUnit;

/** A tape that the mouse draws from one point of a drawing to another, with the distance between them. */
final class MeasuringTape {
    private static final float END_PX = 7;

    private boolean inHand;
    private boolean drawing;
    private Optional<Span> span = Optional.empty();

    private record Span(Point from, Point to) {}

    /** Returns whether the mouse draws the tape. */
    boolean isInHand() {
        return inHand;
    }

    /** Takes the tape in hand, or puts it away with what it shows. */
    void setInHand(boolean wanted) {
        inHand = wanted;
        drawing = false;
        span = Optional.empty();
    }

    void begin(Point mm) {
        drawing = true;
        span = Optional.of(new Span(mm, mm));
    }

    boolean isDrawing() {
        return drawing;
    }

    void drawTo(Point mm) {
        span = span.map(s -> new Span(s.from(), mm));
    }

    void end() {
        drawing = false;
    }

    /** Returns the measured distance in mm; empty before the first. */
    Optional<Double> lengthMm() {
        return span.map(s -> s.from().distance(s.to()));
    }

    void paint(Graphics2D g, Viewport viewport, MeasureUnit unit) {
        span.ifPresent(s -> {
            Point a = viewport.toPx(s.from());
            Point b = viewport.toPx(s.to());
            Path2D line = new Path2D.Double();
            line.moveTo(a.x(), a.y());
            line.lineTo(b.x(), b.y());
            if (a.distance(b) > 0) {
                Point end = b.minus(a).unit().left().times(UIScale.scale(END_PX));
                for (Point p : new Point[] {a, b}) {
                    line.moveTo(p.x() - end.x(), p.y() - end.y());
                    line.lineTo(p.x() + end.x(), p.y() + end.y());
                }
            }
            AnnotationPainter.paintWithHalo(g, line, 1.6f, ThemeColors.dimensionOverlay());
            String text = unit.format(s.from().distance(s.to()), 1);
            Point middle = a.towards(b, 0.5);
            AnnotationPainter.paintLabel(
                    g,
                    text,
                    middle.x() - g.getFontMetrics().stringWidth(text) / 2.0,
                    middle.y() + UIScale.scale(END_PX),
                    ThemeColors.dimensionOverlay());
        });
    }
}
