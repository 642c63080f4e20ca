package weltwright.app.gui.outline;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.swing.JPopupMenu;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.LoupePainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.photo.BackgroundLayer;
import weltwright.app.gui.photo.GroundLinesLayer;
import weltwright.app.gui.photo.PhotoAssessor;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.MovableLandmark;
import weltwright.knife.MovableNode;
import weltwright.knife.MovablePoint;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.outline.UncertainStretch;
import weltwright.units.MeasureUnit;

/**
 * Shows the outline over the photo and edits it with the mouse and the keys: moves landmarks, moves, adds and removes
 * nodes, redraws stretches along the knife's edge, and measures widths. The {@link OutlineTool} determines what the
 * mouse does. Points are in mm in the silhouette frame.
 */
public final class OutlineCanvas extends DrawingCanvas {
    /** Sampling of curves; chosen by eye. */
    private static final double STEP_MM = 0.25;

    // Steps of the arrow keys, without and with Shift, chosen by eye.
    private static final double NUDGE_MM = 0.2;
    private static final double FAR_NUDGE_MM = 2;
    private static final double POINT_NUDGE_MM = 0.1;
    private static final double FAR_POINT_NUDGE_MM = 1;

    /** Greatest distance between outline and edge where a stretch is snapped to the edge; chosen by eye. */
    private static final double SNAP_DISTANCE_MM = 1.5;

    private static final int NOTICE_AWAY_PX = 10;
    private static final Messages TEXTS = Messages.of(OutlineCanvas.class);

    private final JobModel model;
    private final RedrawStroke redrawStroke;
    private final MarkBrush brush;
    private final NodeEditor nodeEditor;
    private final WidthProbe widthProbe = new WidthProbe();
    private final UncertainStretchTour tour;
    private final GroundLinesLayer groundLayer;
    private final List<Runnable> listeners = new ArrayList<>();
    private final BackgroundLayer background = new BackgroundLayer();
    private final LayerOpacity opacity = new LayerOpacity();
    private final PreviousSilhouette previous = new PreviousSilhouette();
    private Optional<Silhouette> preview = Optional.empty();
    private Optional<MovablePoint> selection = Optional.empty();
    private OutlineTool tool = OutlineTool.MARKS;
    private String errorMessage = "";
    private String withheld = "";

    OutlineCanvas(JobModel model, TaskQueue tasks, PhotoAssessor assessor) {
        this.model = model;
        redrawStroke = new RedrawStroke(new StretchRedrawer(model, tasks, this::setErrorMessage), this::repaint);
        brush = new MarkBrush(model, tasks, assessor, this::setErrorMessage);
        nodeEditor = new NodeEditor(model, this::setErrorMessage);
        tour = new UncertainStretchTour(model);
        groundLayer = new GroundLinesLayer(model);
        setName("outline drawing");
        getAccessibleContext().setAccessibleName(TEXTS.text("outline-canvas.outline-over-the-photo"));
        getAccessibleContext().setAccessibleDescription(TEXTS.text("outline-canvas.m-p-r-w-i"));
        OutlineKeyBindings.install(this);
        model.subscribe(() -> {
            preview = Optional.empty();
            previous.update(model.job().silhouette());
            selectedNode()
                    .filter(node -> node.index() >= nodeEditor.nodes().size())
                    .ifPresent(gone -> selection = Optional.empty());
            contentChanged();
        });
    }

    /** Adds a listener that is called whenever the tool, the error message or the ground has changed. */
    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    public WidthProbe widthProbe() {
        return widthProbe;
    }

    OutlineTool tool() {
        return tool;
    }

    void setTool(OutlineTool newTool) {
        tool = newTool;
        tour.pause();
        selection = Optional.empty();
        redrawStroke.clear();
        brush.stroke().clear();
        if (newTool == OutlineTool.WIDTH) {
            silhouette().ifPresent(widthProbe::moveToMiddleOfBlade);
        }
        setErrorMessage("");
    }

    /** Returns why the last edit was refused; empty where it was not. */
    String errorMessage() {
        return errorMessage;
    }

    public void setBackgroundImage(Optional<BackgroundImage> image) {
        background.setImage(image);
        contentChanged();
    }

    /**
     * Shows no outline while an entry is refused on which it depends.
     *
     * @param reason why it was refused, for the user; empty where none is
     */
    public void withhold(String reason) {
        if (!reason.equals(withheld)) {
            withheld = reason;
            cancel();
        }
    }

    public GroundLinesLayer groundLayer() {
        return groundLayer;
    }

    /** To be called when the ground layer has changed. */
    public void groundChanged() {
        setErrorMessage(errorMessage);
    }

    NodeEditor nodeEditor() {
        return nodeEditor;
    }

    MarkBrush brush() {
        return brush;
    }

    /** Deletes the selected node or, with a brush in hand, all painted marks. */
    void delete() {
        if (tool.isBrush()) {
            brush.removeAll();
        } else {
            selectedNode().ifPresent(node -> selectIfPresent(nodeEditor.remove(node)));
        }
    }

    UncertainStretchTour tour() {
        return tour;
    }

    /** Zooms to the next uncertain stretch, or to the one before. */
    void showUncertainStretch(int step) {
        showStretch(tour.moveBy(step));
    }

    /** Zooms to an uncertain stretch. */
    void showUncertainStretch(UncertainStretch stretch) {
        showStretch(tour.moveTo(stretch));
    }

    /** Marks the current uncertain stretch as reviewed and zooms to the next. */
    void acceptStretch() {
        if (tour.current().isPresent()) {
            showStretch(tour.acceptCurrent());
        }
    }

    private void showStretch(Optional<Rectangle2D> area) {
        selection = Optional.empty();
        area.ifPresentOrElse(this::zoomTo, this::zoomToFit);
        requestFocusInWindow();
        setErrorMessage("");
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return background
                .extent()
                .or(() -> preview.or(() -> model.job().silhouette())
                        .map(s -> AnnotationPainter.path(s.outline().sampled(1)).getBounds2D()));
    }

    LayerOpacity opacity() {
        return opacity;
    }

    /** Shows the outline as it was before its last change, while that is wanted. */
    void showBefore(boolean wanted) {
        previous.setShown(wanted);
        repaint();
    }

    @Override
    protected Optional<MeasureUnit> rulerUnit() {
        return Optional.of(model.unit());
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        layers().paintPhoto(g, viewport);
        silhouette().ifPresent(s -> paint(g, viewport, s));
        String notice = previous.shown().isPresent() ? "before" : withheld.isEmpty() ? "" : "no-outline";
        if (!notice.isEmpty()) {
            double away = rulerPx() + NOTICE_AWAY_PX;
            AnnotationPainter.paintLabel(g, TEXTS.text(notice), away, away);
        }
        if (preview.isPresent()) {
            selection.ifPresent(point -> LoupePainter.paint(
                    g,
                    viewport,
                    point.of(preview.orElseThrow()),
                    (inside, magnified) -> layers().paintMagnified(inside, magnified, preview.orElseThrow())));
        }
    }

    private OutlineLayers layers() {
        return new OutlineLayers(model, background, groundLayer, opacity, tour, getWidth(), getHeight(), rulerPx());
    }

    private void paint(Graphics2D g, Viewport viewport, Silhouette s) {
        layers().paintLines(g, viewport, s, painter -> {
            if (tool == OutlineTool.POINTS) {
                List<OutlineNode> nodes = s.outline().nodes();
                for (int i = 0; i < nodes.size(); i++) {
                    painter.paintNode(nodes.get(i), selection.equals(Optional.of(new MovableNode(i))));
                }
            }
            redrawStroke.paint(painter);
            if (tool.isBrush()) {
                brush.paint(g, viewport);
            }
            for (MovableLandmark landmark : MovableLandmark.on(s)) {
                painter.paintLandmark(landmark, s, selection.equals(Optional.of(landmark)));
            }
        });
        layers().paintDimensions(g, viewport, s, painter -> {
            if (tool == OutlineTool.WIDTH) {
                widthProbe.paint(painter, s);
            }
        });
    }

    @Override
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        setErrorMessage("");
        selection = movablePointAt(mm, hitRadiusMm);
        if (selection.isPresent() || silhouette().isEmpty()) {
            return selection.isPresent();
        }
        if (tool == OutlineTool.REDRAW) {
            redrawStroke.begin(mm);
        } else if (tool.isBrush() && brush.isAvailable()) {
            brush.stroke().begin(mm, tool == OutlineTool.KNIFE_BRUSH);
        } else if (tool == OutlineTool.WIDTH) {
            widthProbe.moveTo(mm.x());
            silhouette().ifPresent(widthProbe::measure);
        }
        return tool == OutlineTool.REDRAW || brush.stroke().isDrawing();
    }

    @Override
    protected void dragTo(Point mm) {
        if (redrawStroke.isDrawing()) {
            redrawStroke.add(mm);
        } else if (brush.stroke().isDrawing()) {
            brush.stroke().add(mm);
        } else {
            preview = silhouette().flatMap(s -> selection.map(point -> point.pulled(s, mm)));
        }
    }

    @Override
    protected void endDrag() {
        if (redrawStroke.isDrawing()) {
            selection = Optional.empty();
            redrawStroke.finish(hitRadiusMm());
        } else if (brush.stroke().isDrawing()) {
            brush.finish();
        } else {
            preview.ifPresent(s -> model.change(job -> job.withSilhouette(s)));
        }
    }

    @Override
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return movablePointAt(mm, hitRadiusMm).isPresent();
    }

    @Override
    protected void mouseMovedTo(Point mm) {
        if (tool == OutlineTool.WIDTH) {
            widthProbe.moveTo(mm.x());
            repaint();
        }
    }

    @Override
    protected boolean doubleClicked(Point mm, double hitRadiusMm) {
        if (tool == OutlineTool.POINTS && !isDraggableAt(mm, hitRadiusMm) && isOnOutline(mm, hitRadiusMm)) {
            selectIfPresent(nodeEditor.add(mm));
            return true;
        }
        return tool == OutlineTool.REDRAW || tool.isBrush() || isDraggableAt(mm, hitRadiusMm);
    }

    @Override
    protected Optional<JPopupMenu> popupMenuAt(Point mm, double hitRadiusMm) {
        return OutlinePopupMenu.at(this, mm, hitRadiusMm);
    }

    boolean hasLandmark(MovableLandmark landmark) {
        return silhouette().filter(landmark::isOn).isPresent();
    }

    void showMenuAtSelection() {
        silhouette().flatMap(s -> selection.map(point -> point.of(s))).ifPresent(this::showPopupMenu);
    }

    /** Returns the silhouette to draw: that of the drag, else that of the job. */
    Optional<Silhouette> silhouette() {
        if (previous.shown().isPresent()) {
            return previous.shown();
        }
        return withheld.isEmpty() ? preview.or(() -> model.job().silhouette()) : Optional.empty();
    }

    private Polyline curve() {
        return model.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
    }

    private Optional<MovablePoint> movablePointAt(Point mm, double hitRadiusMm) {
        Optional<MovablePoint> node = tool == OutlineTool.POINTS
                ? nodeEditor.nearestNode(mm, hitRadiusMm).map(n -> n)
                : Optional.empty();
        boolean marks = tool == OutlineTool.MARKS || tool == OutlineTool.POINTS;
        return node.or(() -> marks ? landmarkAt(mm, hitRadiusMm) : Optional.empty());
    }

    private Optional<MovablePoint> landmarkAt(Point mm, double hitRadiusMm) {
        return silhouette()
                .flatMap(s -> MovableLandmark.on(s).stream()
                        .filter(landmark -> landmark.of(s).distance(mm) <= hitRadiusMm)
                        .min(Comparator.comparingDouble(
                                landmark -> landmark.of(s).distance(mm))));
    }

    boolean isOnOutline(Point mm, double hitRadiusMm) {
        Polyline curve = curve();
        return curve.at(curve.stationOf(mm)).distance(mm) <= hitRadiusMm;
    }

    void select(Optional<MovablePoint> grip) {
        selection = grip;
        setErrorMessage("");
    }

    void selectIfPresent(Optional<MovableNode> node) {
        node.ifPresent(n -> select(Optional.of(n)));
    }

    Optional<MovableNode> selectedNode() {
        return selection.map(point -> point instanceof MovableNode node ? node : null);
    }

    /**
     * Selects the node {@code step} places further; without a selected node, the one nearest to the middle of the
     * canvas.
     */
    void selectNeighbour(int step) {
        if (nodeEditor.nodes().isEmpty()) {
            return;
        }
        if (tool != OutlineTool.POINTS) {
            setTool(OutlineTool.POINTS);
        }
        selectIfPresent(selectedNode()
                .map(node -> nodeEditor.nodeAfter(node, step))
                .or(() -> nodeEditor.nearestNode(viewport().centre(), Double.MAX_VALUE)));
    }

    void moveSelection(int right, int up, boolean far) {
        if (tool == OutlineTool.WIDTH) {
            widthProbe.moveBy(right, far);
            repaint();
        } else if (selection.isPresent() && selection.get() instanceof MovableLandmark landmark && right != 0) {
            double mm = -right * (far ? FAR_NUDGE_MM : NUDGE_MM);
            nodeEditor.edit("nudge " + landmark, s -> landmark.nudged(s, mm));
        } else {
            double mm = far ? FAR_POINT_NUDGE_MM : POINT_NUDGE_MM;
            if (selection.isEmpty()) {
                pan(-right * KEY_PAN_PX, up * KEY_PAN_PX);
            }
            selectedNode()
                    .ifPresent(node -> nodeEditor.edit(
                            "nudge " + node, s -> node.pulled(s, node.of(s).plus(new Point(right * mm, up * mm)))));
        }
    }

    /** Redraws the outline along the edge, around the selected node or at the current uncertain stretch. */
    void snapToEdge() {
        selectedNode()
                .map(node -> nodeEditor.stretchBetween(nodeEditor.nodeAfter(node, -1), nodeEditor.nodeAfter(node, 1)))
                .or(() -> tour.current().map(this::uncertainStretch))
                .ifPresent(stretch -> {
                    selection = Optional.empty();
                    redrawStroke.redrawAlong(stretch, SNAP_DISTANCE_MM);
                });
    }

    private Polyline uncertainStretch(UncertainStretch uncertain) {
        Polyline curve = curve();
        return curve.stretch(
                curve.stationOf(uncertain.from()) - RedrawStroke.MIN_LENGTH_MM,
                curve.stationOf(uncertain.to()) + RedrawStroke.MIN_LENGTH_MM);
    }

    /** Discards the stroke and the preview of a drag, and clears the selection. */
    void cancel() {
        redrawStroke.clear();
        brush.stroke().clear();
        preview = Optional.empty();
        select(Optional.empty());
    }

    private void setErrorMessage(String message) {
        errorMessage = message;
        List.copyOf(listeners).forEach(Runnable::run);
        repaint();
    }
}
