package weltwright.app.gui.outline;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JPopupMenu;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.app.gui.photo.GroundLinesLayer;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.MovableLandmark;
import weltwright.knife.MovableNode;
import weltwright.knife.MovablePoint;
import weltwright.knife.Silhouette;
import weltwright.trace.outline.UncertainStretch;

/**
 * The outline over the photo, and all that a hand does to it: four landmarks to be pulled, the points that the curve
 * runs through, stretches drawn anew along the edge, places to be measured. Each with the mouse or with the keys; a
 * {@link OutlineTool} says which of them the mouse does.
 */
public final class OutlineCanvas extends DrawingCanvas {
    private static final double STEP_MM = 0.25;
    private static final double NUDGE_MM = 0.2;
    private static final double FAR_NUDGE_MM = 2;
    private static final double POINT_NUDGE_MM = 0.1;
    private static final double FAR_POINT_NUDGE_MM = 1;

    /** Where the outline between two points or at an unsure stretch is sent to the edge, it may be this far off. */
    private static final double SNAP_DISTANCE_MM = 1.5;

    /** A guard is marked so long, for its two ends to be pulled to where they are. */
    private static final double DEFAULT_GUARD_MM = 6;

    private final JobModel model;
    private final RedrawStroke redrawStroke;
    private final NodeEditor nodeEditor;
    private final WidthProbe widthProbe = new WidthProbe();
    private final UncertainStretchTour tour;
    private final GroundLinesLayer groundLayer;
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<BackgroundImage> backgroundImage = Optional.empty();
    private Optional<Silhouette> preview = Optional.empty();
    private Optional<MovablePoint> selection = Optional.empty();
    private OutlineTool tool = OutlineTool.MARKS;
    private String errorMessage = "";

    OutlineCanvas(JobModel model, TaskQueue tasks) {
        this.model = model;
        redrawStroke = new RedrawStroke(new StretchRedrawer(model, tasks, this::setErrorMessage), this::repaint);
        nodeEditor = new NodeEditor(model, this::setErrorMessage);
        tour = new UncertainStretchTour(model);
        groundLayer = new GroundLinesLayer(model);
        setName("outline drawing");
        getAccessibleContext().setAccessibleName("Outline over the photo");
        getAccessibleContext()
                .setAccessibleDescription(
                        "M, P, R, W: marks, points, redraw, width. N: next place that the trace was not sure of.");
        for (OutlineTool each : OutlineTool.values()) {
            bindKey("pressed " + each.key(), () -> setTool(each));
        }
        for (MovableLandmark landmark : MovableLandmark.values()) {
            bindKey(
                    "pressed " + key(landmark),
                    () -> select(Optional.<MovablePoint>of(landmark).filter(p -> hasLandmark(landmark))));
        }
        bindKey("LEFT", () -> moveSelection(-1, 0, false));
        bindKey("RIGHT", () -> moveSelection(1, 0, false));
        bindKey("UP", () -> moveSelection(0, 1, false));
        bindKey("DOWN", () -> moveSelection(0, -1, false));
        bindKey("shift LEFT", () -> moveSelection(-1, 0, true));
        bindKey("shift RIGHT", () -> moveSelection(1, 0, true));
        bindKey("shift UP", () -> moveSelection(0, 1, true));
        bindKey("shift DOWN", () -> moveSelection(0, -1, true));
        bindKey("PERIOD", () -> selectNeighbour(1));
        bindKey("COMMA", () -> selectNeighbour(-1));
        bindKey("INSERT", () -> selectedNode().ifPresent(node -> selectIfPresent(nodeEditor.addAfter(node))));
        bindKey("pressed A", () -> selectedNode().ifPresent(node -> selectIfPresent(nodeEditor.addAfter(node))));
        bindKey("DELETE", () -> selectedNode().ifPresent(node -> selectIfPresent(nodeEditor.remove(node))));
        bindKey("BACK_SPACE", () -> selectedNode().ifPresent(node -> selectIfPresent(nodeEditor.remove(node))));
        bindKey("pressed C", () -> selectedNode().ifPresent(nodeEditor::toggleCorner));
        bindKey("pressed E", this::snapToEdge);
        bindKey("pressed N", () -> showUncertainStretch(1));
        bindKey("shift N", () -> showUncertainStretch(-1));
        bindKey("pressed Y", this::acceptStretch);
        bindKey("pressed G", () -> {
            groundLayer.setShown(!groundLayer.isShown());
            groundChanged();
        });
        bindKey("ENTER", () -> {
            if (tool == OutlineTool.WIDTH) {
                silhouette().ifPresent(widthProbe::measure);
            }
        });
        bindKey("ESCAPE", () -> {
            redrawStroke.clear();
            preview = Optional.empty();
            select(Optional.empty());
        });
        bindKey("CONTEXT_MENU", this::showMenuAtSelection);
        bindKey("shift F10", this::showMenuAtSelection);
        model.subscribe(() -> {
            preview = Optional.empty();
            selectedNode()
                    .filter(node -> node.index() >= nodeEditor.nodes().size())
                    .ifPresent(gone -> selection = Optional.empty());
            contentChanged();
        });
    }

    /** Called when the tool, or what to say, is another. */
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
        if (newTool == OutlineTool.WIDTH) {
            silhouette().ifPresent(widthProbe::moveToMiddleOfBlade);
        }
        setErrorMessage("");
    }

    /** Why the last thing asked for was not done; or empty. */
    String errorMessage() {
        return errorMessage;
    }

    public void setBackgroundImage(Optional<BackgroundImage> image) {
        backgroundImage = image;
        contentChanged();
    }

    public GroundLinesLayer groundLayer() {
        return groundLayer;
    }

    /** To be called when the ground is another, or is to be shown or no longer. */
    public void groundChanged() {
        setErrorMessage(errorMessage);
    }

    UncertainStretchTour tour() {
        return tour;
    }

    /** Leads the eye to the next stretch, or the one before, where the trace was not sure. */
    void showUncertainStretch(int step) {
        showStretch(tour.moveBy(step));
    }

    /** Says of the stretch that the eye was led to that the outline is right there, and goes to the next. */
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
        return backgroundImage
                .map(BackgroundImage::extent)
                .or(() -> silhouette()
                        .map(s -> AnnotationPainter.path(s.outline().sampled(1)).getBounds2D()));
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        backgroundImage.ifPresent(p -> p.paint(g, viewport));
        backgroundImage.ifPresent(p -> groundLayer.paint(g, viewport, p));
        silhouette().ifPresent(s -> paint(new OutlinePainter(g, viewport, getWidth(), getHeight()), s));
    }

    private void paint(OutlinePainter painter, Silhouette s) {
        Polyline curve = s.outline().sampled(STEP_MM);
        model.job()
                .unsure()
                .forEach(u -> painter.paintUncertainStretch(
                        u.along(curve), tour.current().equals(Optional.of(u))));
        painter.paintOutline(s);
        model.job().calipers().forEach(caliper -> painter.paintCaliper(caliper, s));
        if (tool == OutlineTool.WIDTH) {
            widthProbe.paint(painter, s);
        }
        if (tool == OutlineTool.POINTS) {
            List<OutlineNode> nodes = s.outline().nodes();
            for (int i = 0; i < nodes.size(); i++) {
                painter.paintNode(nodes.get(i), selection.equals(Optional.of(new MovableNode(i))));
            }
        }
        redrawStroke.paint(painter);
        for (MovableLandmark landmark : MovableLandmark.on(s)) {
            painter.paintLandmark(landmark, s, selection.equals(Optional.of(landmark)));
        }
        painter.paintLegend(model.job()
                .trace()
                .map(t -> String.format(
                        Locale.ROOT,
                        "95 of 100 places within %.2f mm",
                        t.error().error95Mm()))
                .orElse(""));
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
        } else if (tool == OutlineTool.WIDTH) {
            widthProbe.moveTo(mm.x());
            silhouette().ifPresent(widthProbe::measure);
        }
        return tool == OutlineTool.REDRAW;
    }

    @Override
    protected void dragTo(Point mm) {
        if (redrawStroke.isDrawing()) {
            redrawStroke.add(mm);
        } else {
            preview = silhouette().flatMap(s -> selection.map(point -> point.pulled(s, mm)));
        }
    }

    @Override
    protected void endDrag() {
        if (redrawStroke.isDrawing()) {
            selection = Optional.empty();
            redrawStroke.finish(hitRadiusMm());
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
        return tool == OutlineTool.REDRAW || isDraggableAt(mm, hitRadiusMm);
    }

    @Override
    protected Optional<JPopupMenu> popupMenuAt(Point mm, double hitRadiusMm) {
        JPopupMenu menu = new JPopupMenu();
        if (silhouette().isEmpty()) {
            return Optional.empty();
        }
        Optional<MovableNode> node = nodeEditor.nearestNode(mm, hitRadiusMm);
        if (node.isPresent()) {
            setTool(OutlineTool.POINTS);
            select(Optional.of(node.get()));
            boolean sharp = nodeEditor.node(node.get()).sharp();
            menu.add(new RunnableAction(
                    sharp ? "Make it &smooth" : "Make it a &corner", "", () -> nodeEditor.toggleCorner(node.get())));
            menu.add(
                    new RunnableAction("&Remove this point", "", () -> selectIfPresent(nodeEditor.remove(node.get()))));
            menu.add(new RunnableAction("Pull to the &edge here", "", this::snapToEdge));
        } else if (isOnOutline(mm, hitRadiusMm)) {
            menu.add(new RunnableAction("&Add a point here", "", () -> {
                setTool(OutlineTool.POINTS);
                selectIfPresent(nodeEditor.add(mm));
            }));
        }
        addGuardActions(menu, mm, hitRadiusMm);
        tour.current()
                .ifPresent(
                        stretch -> menu.add(new RunnableAction("The outline is r&ight here", "", this::acceptStretch)));
        return menu.getComponentCount() == 0 ? Optional.empty() : Optional.of(menu);
    }

    private void addGuardActions(JPopupMenu menu, Point mm, double hitRadiusMm) {
        Silhouette now = silhouette().orElseThrow();
        if (now.landmarks().guard().isPresent()) {
            menu.add(new RunnableAction("There is n&o guard", "", () -> {
                selection = Optional.empty();
                nodeEditor.edit(null, s -> s.withGuard(Optional.empty()));
            }));
        } else if (isOnOutline(mm, hitRadiusMm)) {
            double fromTip = now.landmarks().tip().x() - mm.x();
            menu.add(new RunnableAction(
                    "Mark a &guard here",
                    "",
                    () -> nodeEditor.edit(
                            null,
                            s -> s.withGuardFromTip(fromTip - DEFAULT_GUARD_MM / 2, fromTip + DEFAULT_GUARD_MM / 2))));
        }
    }

    /** The key that takes hold of a landmark. */
    private static char key(MovableLandmark landmark) {
        return switch (landmark) {
            case TIP -> 'T';
            case HEEL -> 'H';
            case SPINE -> 'S';
            case BUTT -> 'B';
            case GUARD_FRONT -> 'F';
            case GUARD_BACK -> 'K';
        };
    }

    private boolean hasLandmark(MovableLandmark landmark) {
        return silhouette().filter(landmark::isOn).isPresent();
    }

    private void showMenuAtSelection() {
        silhouette().flatMap(s -> selection.map(point -> point.of(s))).ifPresent(this::showPopupMenu);
    }

    /** The outline as it is to be drawn. */
    private Optional<Silhouette> silhouette() {
        return preview.or(() -> model.job().silhouette());
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

    private boolean isOnOutline(Point mm, double hitRadiusMm) {
        Polyline curve = curve();
        return curve.at(curve.stationOf(mm)).distance(mm) <= hitRadiusMm;
    }

    private void select(Optional<MovablePoint> grip) {
        selection = grip;
        setErrorMessage("");
    }

    private void selectIfPresent(Optional<MovableNode> node) {
        node.ifPresent(n -> select(Optional.of(n)));
    }

    private Optional<MovableNode> selectedNode() {
        return selection.map(point -> point instanceof MovableNode node ? node : null);
    }

    /** On from point to point round the outline; begins with the one nearest to the middle of the drawing. */
    private void selectNeighbour(int step) {
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

    private void moveSelection(int right, int up, boolean far) {
        if (tool == OutlineTool.WIDTH) {
            widthProbe.moveBy(right, far);
            repaint();
        } else if (selection.isPresent() && selection.get() instanceof MovableLandmark landmark && right != 0) {
            double mm = -right * (far ? FAR_NUDGE_MM : NUDGE_MM);
            nodeEditor.edit("nudge " + landmark, s -> landmark.nudged(s, mm));
        } else {
            double mm = far ? FAR_POINT_NUDGE_MM : POINT_NUDGE_MM;
            selectedNode()
                    .ifPresent(node -> nodeEditor.edit(
                            "nudge " + node, s -> node.pulled(s, node.of(s).plus(new Point(right * mm, up * mm)))));
        }
    }

    /** The outline about the held point, or at the unsure stretch, sent to the edge near it. */
    private void snapToEdge() {
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

    private void setErrorMessage(String message) {
        errorMessage = message;
        List.copyOf(listeners).forEach(Runnable::run);
        repaint();
    }
}
