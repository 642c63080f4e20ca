package weltwright.app.gui.photo;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.LoupePainter;
import weltwright.app.gui.drawing.MarkStroke;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.Photo;
import weltwright.message.Messages;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.ground.GroundChoice;
import weltwright.wording.TraceWording;

/**
 * Shows the photo as taken with the ground that was found in it. Where the ground is a rectangle whose corners are set
 * by hand, its corners can be moved with the mouse or the keys; a magnifier shows the selected one. With a brush, the
 * mouse marks what is knife and what is not.
 */
public class PhotoCanvas extends DrawingCanvas {
    private static final Messages TEXTS = Messages.of(PhotoCanvas.class);

    // Chosen by eye.
    private static final double FAR_NUDGE_PX = 10;

    /**
     * Distance of the marks along a stroke, as a part of the photo's greater side: some 4 mm where the photo shows 40
     * cm.
     */
    private static final double MARK_SPACING = 0.01;

    private final JobModel model;
    private final List<Runnable> listeners = new ArrayList<>();
    private final BackgroundLayer background = new BackgroundLayer();
    private Optional<PhotoAssessment.SeenGround> ground = Optional.empty();
    private Optional<GroundChoice.Rectangle> preview = Optional.empty();
    private Optional<Integer> selection = Optional.empty();
    private Object dragKey = new Object();
    private final MarkStroke stroke = new MarkStroke();
    private Optional<Boolean> brush = Optional.empty();
    private List<Point> rejectedOutlinePx = List.of();
    private String errorMessage = "";

    public PhotoCanvas(JobModel model) {
        this.model = model;
        setName("photo drawing");
        getAccessibleContext().setAccessibleName(TEXTS.text("photo-canvas.the-photo"));
        getAccessibleContext().setAccessibleDescription(TEXTS.text("photo-canvas.where-the-ground-is-a"));
        for (int k = 0; k < 4; k++) {
            int corner = k;
            bindKey("pressed " + (k + 1), () -> select(Optional.of(corner)));
            bindKey("pressed NUMPAD" + (k + 1), () -> select(Optional.of(corner)));
        }
        bindKey("PERIOD", () -> selectNeighbour(1));
        bindKey("COMMA", () -> selectNeighbour(3));
        bindKey("LEFT", () -> moveSelection(-1, 0));
        bindKey("RIGHT", () -> moveSelection(1, 0));
        bindKey("UP", () -> moveSelection(0, -1));
        bindKey("DOWN", () -> moveSelection(0, 1));
        bindKey("shift LEFT", () -> moveSelection(-FAR_NUDGE_PX, 0));
        bindKey("shift RIGHT", () -> moveSelection(FAR_NUDGE_PX, 0));
        bindKey("shift UP", () -> moveSelection(0, -FAR_NUDGE_PX));
        bindKey("shift DOWN", () -> moveSelection(0, FAR_NUDGE_PX));
        bindKey("ESCAPE", () -> {
            preview = Optional.empty();
            stroke.clear();
            select(Optional.empty());
        });
        model.subscribe(() -> {
            preview = Optional.empty();
            if (rectangle().isEmpty()) {
                selection = Optional.empty();
            }
            contentChanged();
        });
    }

    /** Adds a listener that is called whenever the error message is set. */
    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    public final void setBackgroundImage(Optional<BackgroundImage> image) {
        background.setImage(image);
        contentChanged();
    }

    void setGround(Optional<PhotoAssessment.SeenGround> newGround) {
        ground = newGround;
        repaint();
    }

    /**
     * Gives the mouse a brush.
     *
     * @param knife whether the brush marks what is knife; empty where the mouse is to have none
     */
    void setBrush(Optional<Boolean> knife) {
        brush = knife;
        stroke.clear();
        repaint();
    }

    /**
     * Shows a line that was rejected.
     *
     * @param px points along a closed line that was taken for the outline and is none; none where there is no such
     */
    void setRejectedOutline(List<Point> px) {
        rejectedOutlinePx = px;
        repaint();
    }

    private List<KnifeMark> marks() {
        return model.job().settings().marks();
    }

    /** Removes all marks of what is knife and what is not. */
    void removeMarks() {
        setMarks(List.of());
    }

    private void setMarks(List<KnifeMark> marks) {
        if (!marks.equals(marks())) {
            model.change(job -> job.withSettings(job.settings().withMarks(marks)));
        }
    }

    /** Returns why the last edit was refused; empty where it was not. */
    String errorMessage() {
        return errorMessage;
    }

    /** Returns the rectangle to draw; empty where the ground is another. */
    private Optional<GroundChoice.Rectangle> rectangle() {
        return preview.or(() -> model.job().settings().ground().asRectangle());
    }

    private List<Point> corners() {
        return rectangle().map(GroundChoice.Rectangle::corners).orElse(List.of()).stream()
                .map(this::toMm)
                .toList();
    }

    private Optional<Photo> photo() {
        return model.job().photo();
    }

    private double mmPerPx() {
        return photo().map(photo -> BackgroundImage.AS_TAKEN_WIDTH_MM / photo.widthPx())
                .orElse(1.0);
    }

    /** Converts a point of the upright photo (px, pixel centres at whole numbers) to the drawing (mm). */
    public final Point toMm(Point px) {
        double height = photo().map(Photo::heightPx).orElse(0);
        return new Point(px.x() + 0.5, height - px.y() - 0.5).times(mmPerPx());
    }

    /** Converts a point of the drawing (mm) to the upright photo (px). */
    protected final Point toPx(Point mm) {
        double height = photo().map(Photo::heightPx).orElse(0);
        Point px = mm.times(1 / mmPerPx());
        return new Point(px.x() - 0.5, height - px.y() - 0.5);
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return background.extent();
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        background.paint(g, viewport);
        if (rectangle().isEmpty()) {
            ground.ifPresent(cornerPx -> {
                Graphics2D onPhoto = (Graphics2D) g.create();
                background
                        .extent()
                        .ifPresent(photo -> onPhoto.clip(viewport.transform().createTransformedShape(photo)));
                GroundPainter.paint(
                        onPhoto,
                        viewport,
                        cornerPx.lines().stream()
                                .map(line -> line.map(this::toMm))
                                .toList());
                onPhoto.dispose();
                GroundPainter.paintTitle(g, rulerPx(), TraceWording.label(cornerPx.label(), model.unit()));
            });
        }
        rectangle().ifPresent(rectangle -> {
            paintSides(g, viewport, rectangle);
            List<Point> corners = corners();
            for (int k = 0; k < corners.size(); k++) {
                paintCorner(g, viewport.toPx(corners.get(k)), k);
            }
            selection.ifPresent(k -> LoupePainter.paint(g, viewport, corners.get(k), this::paintMagnified));
        });
        if (!rejectedOutlinePx.isEmpty()) {
            Polyline line =
                    Polyline.closed(rejectedOutlinePx.stream().map(this::toMm).toList());
            Shape path = viewport.transform().createTransformedShape(AnnotationPainter.path(line));
            AnnotationPainter.paintWithHalo(g, path, 1.6f, ThemeColors.uncertainOverlay());
        }
        marks().forEach(mark -> MarkStroke.paintMark(g, viewport, toMm(mark.pixel()), mark.isKnife()));
        stroke.paint(g, viewport);
    }

    private void paintSides(Graphics2D g, Viewport viewport, GroundChoice.Rectangle rectangle) {
        List<Point> corners = corners();
        Shape sides = viewport.transform().createTransformedShape(AnnotationPainter.path(Polyline.closed(corners)));
        AnnotationPainter.paintWithHalo(g, sides, 1.6f, ThemeColors.handleOverlay());
        paintSideLength(g, viewport.toPx(corners.get(0).towards(corners.get(1), 0.5)), rectangle.widthMm());
        paintSideLength(g, viewport.toPx(corners.get(1).towards(corners.get(2), 0.5)), rectangle.heightMm());
    }

    private void paintSideLength(Graphics2D g, Point px, double mm) {
        String text = model.unit().format(mm);
        AnnotationPainter.paintLabel(
                g,
                text,
                px.x() - g.getFontMetrics().stringWidth(text) / 2.0 - 5,
                px.y() + 6,
                ThemeColors.handleOverlay());
    }

    private void paintCorner(Graphics2D g, Point px, int corner) {
        boolean selected = selection.equals(Optional.of(corner));
        double r = UIScale.scale(selected ? 9f : 7f);
        Shape ring = new Ellipse2D.Double(px.x() - r, px.y() - r, 2 * r, 2 * r);
        AnnotationPainter.paintWithHalo(g, ring, 2, selected ? ThemeColors.handleOverlay() : Color.WHITE);
        AnnotationPainter.paintLabel(
                g, (corner + 1) + "  " + GroundChoice.Rectangle.CORNER_NAMES.get(corner), px.x() + 14, px.y() - 26);
    }

    private void paintMagnified(Graphics2D g, Viewport viewport) {
        background.image().ifPresent(photo -> photo.paint(g, viewport));
        g.setStroke(AnnotationPainter.roundStroke(1));
        g.setColor(ThemeColors.handleOverlay());
        g.draw(viewport.transform().createTransformedShape(AnnotationPainter.path(Polyline.closed(corners()))));
    }

    /** Returns 1 where a pixel of the photo is one of the screen. */
    @Override
    protected double zoomShown() {
        return viewport().pxPerMm() * mmPerPx();
    }

    @Override
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        select(cornerAt(mm, hitRadiusMm));
        dragKey = new Object();
        if (selection.isEmpty()
                && background
                        .extent()
                        .filter(photo -> photo.contains(mm.x(), mm.y()))
                        .isPresent()) {
            brush.ifPresent(knife -> stroke.begin(mm, knife));
        }
        return selection.isPresent() || stroke.isDrawing();
    }

    @Override
    protected void dragTo(Point mm) {
        if (stroke.isDrawing()) {
            stroke.add(mm);
        }
        selection.ifPresent(k -> withCorner(k, toPx(mm)).ifPresent(rectangle -> preview = Optional.of(rectangle)));
    }

    @Override
    protected void endDrag() {
        if (stroke.isDrawing()) {
            List<KnifeMark> marks = new ArrayList<>(marks());
            double spacingPx = MARK_SPACING
                    * photo().map(p -> Math.max(p.widthPx(), p.heightPx())).orElse(1);
            stroke.finish(spacingPx * mmPerPx()).forEach(mm -> marks.add(new KnifeMark(toPx(mm), stroke.isKnife())));
            setMarks(marks);
        }
        preview.ifPresent(rectangle -> setRectangle(dragKey, rectangle));
    }

    @Override
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return cornerAt(mm, hitRadiusMm).isPresent();
    }

    private Optional<Integer> cornerAt(Point mm, double hitRadiusMm) {
        List<Point> corners = corners();
        return IntStream.range(0, corners.size())
                .boxed()
                .filter(k -> corners.get(k).distance(mm) <= hitRadiusMm)
                .min(Comparator.comparingDouble(k -> corners.get(k).distance(mm)));
    }

    private void select(Optional<Integer> corner) {
        selection = rectangle().isPresent() ? corner : Optional.empty();
        setErrorMessage("");
    }

    private void selectNeighbour(int by) {
        select(Optional.of(selection.map(k -> (k + by) % 4).orElse(0)));
    }

    private void moveSelection(double rightPx, double downPx) {
        if (selection.isEmpty()) {
            pan(-Math.signum(rightPx) * KEY_PAN_PX, -Math.signum(downPx) * KEY_PAN_PX);
        }
        selection.ifPresent(k -> withCorner(
                        k, rectangle().orElseThrow().corners().get(k).plus(new Point(rightPx, downPx)))
                .ifPresent(rectangle -> setRectangle("nudge corner " + k, rectangle)));
    }

    /**
     * Returns the rectangle with one corner moved, at most to the photo's border; empty where it would not be convex.
     */
    private Optional<GroundChoice.Rectangle> withCorner(int corner, Point toPx) {
        GroundChoice.Rectangle rectangle = rectangle().orElseThrow();
        List<Point> corners = new ArrayList<>(rectangle.corners());
        corners.set(
                corner,
                new Point(
                        clamp(toPx.x(), photo().map(Photo::widthPx).orElse(1)),
                        clamp(toPx.y(), photo().map(Photo::heightPx).orElse(1))));
        try {
            GroundChoice.Rectangle moved =
                    new GroundChoice.Rectangle(rectangle.widthMm(), rectangle.heightMm(), corners);
            setErrorMessage("");
            return Optional.of(moved);
        } catch (UserFacingException e) {
            setErrorMessage(TEXTS.text("photo-canvas.the-four-sides-must-not"));
            return Optional.empty();
        }
    }

    private static double clamp(double px, int count) {
        return Math.max(0, Math.min(count - 1, px));
    }

    private void setRectangle(Object mergeKey, GroundChoice.Rectangle rectangle) {
        model.change(mergeKey, job -> job.withSettings(job.settings().withGround(rectangle)));
    }

    private void setErrorMessage(String message) {
        errorMessage = message;
        List.copyOf(listeners).forEach(Runnable::run);
        repaint();
    }
}
