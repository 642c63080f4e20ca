package weltwright.app.gui.leather;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.photo.PhotoCanvas;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.hide.HideSettings;
import weltwright.hide.HideTrace;
import weltwright.message.Messages;

/**
 * A photo of leather with the outline and the holes that were found. The outline, where it was not found, flaws and
 * poorer parts are drawn round by the mouse, and a line along the direction of least stretch.
 */
final class HideCanvas extends PhotoCanvas {
    /** Shorter lines than this count as a click. In pixels of the photo, chosen by eye. */
    private static final double LEAST_LINE_PX = 8;

    private static final float LINE_PX = 1.8f;

    private final transient Messages messages = Messages.of(HideCanvas.class);
    private final transient Runnable markListener;
    private transient List<Mark> marks = List.of();
    private transient Optional<HideTrace.Seen> found = Optional.empty();
    private transient List<Point> drawnPx = List.of();
    private transient Optional<Kind> tool = Optional.empty();

    /** What can be drawn. */
    enum Kind {
        OUTLINE,
        FLAW,
        POORER,
        LEAST_STRETCH
    }

    private record Mark(Kind kind, Polyline line) {}

    /** @param markListener called whenever something was drawn or taken back */
    HideCanvas(JobModel model, Runnable markListener) {
        super(model);
        this.markListener = markListener;
        setName("hide drawing");
        getAccessibleContext().setAccessibleName(messages.text("hide.canvas"));
        getAccessibleContext().setAccessibleDescription(messages.text("hide.canvas.description"));
    }

    /** Takes what the mouse draws; empty where it moves the photo. */
    void setTool(Optional<Kind> newTool) {
        tool = newTool;
    }

    void setFound(Optional<HideTrace.Seen> seen) {
        found = seen;
        repaint();
    }

    void removeMarks() {
        marks = List.of();
        repaint();
    }

    boolean hasMarks() {
        return !marks.isEmpty();
    }

    void takeBackLast() {
        if (!marks.isEmpty()) {
            marks = marks.subList(0, marks.size() - 1);
            markListener.run();
            repaint();
        }
    }

    /** The lines round flaws or poorer parts, closed, in pixels of the photo. */
    List<Polyline> lines(Kind kind) {
        return marks.stream().filter(mark -> mark.kind == kind).map(Mark::line).toList();
    }

    /** The outline that was drawn last. */
    Optional<Polyline> outline() {
        return lines(Kind.OUTLINE).stream().reduce((before, last) -> last);
    }

    /** The direction that was drawn last. */
    Optional<HideSettings.Direction> leastStretch() {
        return lines(Kind.LEAST_STRETCH).stream()
                .reduce((before, last) -> last)
                .map(line -> new HideSettings.Direction(
                        line.points().get(0), line.points().get(1)));
    }

    @Override
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return super.isDraggableAt(mm, hitRadiusMm) || (tool.isPresent() && extent().isPresent());
    }

    @Override
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        if (super.beginDrag(mm, hitRadiusMm)) {
            return true;
        }
        drawnPx = tool.isPresent() && extent().isPresent() ? List.of(toPx(mm)) : List.of();
        return !drawnPx.isEmpty();
    }

    @Override
    protected void dragTo(Point mm) {
        if (drawnPx.isEmpty()) {
            super.dragTo(mm);
            return;
        }
        boolean straight = tool.equals(Optional.of(Kind.LEAST_STRETCH));
        List<Point> longer = new ArrayList<>(straight ? drawnPx.subList(0, 1) : drawnPx);
        longer.add(toPx(mm));
        drawnPx = longer;
    }

    @Override
    protected void endDrag() {
        if (drawnPx.isEmpty()) {
            super.endDrag();
            return;
        }
        List<Point> points = List.copyOf(drawnPx);
        drawnPx = List.of();
        tool.filter(kind -> isLine(kind, points)).ifPresent(kind -> {
            List<Mark> more = new ArrayList<>(marks);
            more.add(new Mark(kind, kind == Kind.LEAST_STRETCH ? Polyline.open(points) : Polyline.closed(points)));
            marks = List.copyOf(more);
            markListener.run();
        });
        repaint();
    }

    private static boolean isLine(Kind kind, List<Point> points) {
        if (kind == Kind.LEAST_STRETCH) {
            return points.size() == 2 && points.get(0).distance(points.get(1)) >= LEAST_LINE_PX;
        }
        return points.size() >= 3 && Math.abs(Polyline.closed(points).signedAreaMm2()) >= LEAST_LINE_PX * LEAST_LINE_PX;
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        super.paintDrawing(g, viewport);
        found.ifPresent(seen -> {
            paint(g, viewport, seen.outline(), ThemeColors.edgeOverlay());
            seen.holes().forEach(hole -> paint(g, viewport, hole, ThemeColors.uncertainOverlay()));
        });
        marks.forEach(mark -> paint(g, viewport, mark.line, color(mark.kind)));
        if (drawnPx.size() > 1) {
            paint(
                    g,
                    viewport,
                    Polyline.open(drawnPx),
                    tool.map(HideCanvas::color).orElse(Color.WHITE));
        }
        if (extent().isEmpty()) {
            AnnotationPainter.paintPlaceholder(g, messages.text("hide.canvas.empty"), getWidth(), getHeight());
        }
    }

    private static Color color(Kind kind) {
        return switch (kind) {
            case OUTLINE -> ThemeColors.edgeOverlay();
            case FLAW -> ThemeColors.uncertainOverlay();
            case POORER -> ThemeColors.handleOverlay();
            case LEAST_STRETCH -> ThemeColors.spineOverlay();
        };
    }

    private void paint(Graphics2D g, Viewport viewport, Polyline px, Color color) {
        AnnotationPainter.paintWithHalo(
                g,
                viewport.transform().createTransformedShape(AnnotationPainter.path(px.map(this::toMm))),
                LINE_PX,
                color);
    }
}
