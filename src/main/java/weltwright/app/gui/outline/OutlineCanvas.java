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
    private static final double PULL_REACH_MM = 1.5;

    /** A guard is marked so long, for its two ends to be pulled to where they are. */
    private static final double GUARD_MM = 6;

    private final JobModel bench;
    private final RedrawStroke stroke;
    private final NodeEditor points;
    private final WidthProbe width = new WidthProbe();
    private final UncertainStretchTour tour;
    private final GroundLinesLayer ground;
    private final List<Runnable> watchers = new ArrayList<>();
    private Optional<BackgroundImage> picture = Optional.empty();
    private Optional<Silhouette> pulled = Optional.empty();
    private Optional<MovablePoint> held = Optional.empty();
    private OutlineTool tool = OutlineTool.MARKS;
    private String refusal = "";

    OutlineCanvas(JobModel bench, TaskQueue work) {
        this.bench = bench;
        stroke = new RedrawStroke(new StretchRedrawer(bench, work, this::refuse), this::repaint);
        points = new NodeEditor(bench, this::refuse);
        tour = new UncertainStretchTour(bench);
        ground = new GroundLinesLayer(bench);
        setName("outline drawing");
        getAccessibleContext().setAccessibleName("Outline over the photo");
        getAccessibleContext()
                .setAccessibleDescription(
                        "M, P, R, W: marks, points, redraw, width. N: next place that the trace was not sure of.");
        for (OutlineTool each : OutlineTool.values()) {
            onKey("pressed " + each.key(), () -> take(each));
        }
        for (MovableLandmark place : MovableLandmark.values()) {
            onKey(
                    "pressed " + key(place),
                    () -> hold(Optional.<MovablePoint>of(place).filter(p -> isThere(place))));
        }
        onKey("LEFT", () -> arrow(-1, 0, false));
        onKey("RIGHT", () -> arrow(1, 0, false));
        onKey("UP", () -> arrow(0, 1, false));
        onKey("DOWN", () -> arrow(0, -1, false));
        onKey("shift LEFT", () -> arrow(-1, 0, true));
        onKey("shift RIGHT", () -> arrow(1, 0, true));
        onKey("shift UP", () -> arrow(0, 1, true));
        onKey("shift DOWN", () -> arrow(0, -1, true));
        onKey("PERIOD", () -> step(1));
        onKey("COMMA", () -> step(-1));
        onKey("INSERT", () -> heldNode().ifPresent(node -> holdIf(points.addAfter(node))));
        onKey("pressed A", () -> heldNode().ifPresent(node -> holdIf(points.addAfter(node))));
        onKey("DELETE", () -> heldNode().ifPresent(node -> holdIf(points.remove(node))));
        onKey("BACK_SPACE", () -> heldNode().ifPresent(node -> holdIf(points.remove(node))));
        onKey("pressed C", () -> heldNode().ifPresent(points::turn));
        onKey("pressed E", this::pullToEdge);
        onKey("pressed N", () -> nextUnsure(1));
        onKey("shift N", () -> nextUnsure(-1));
        onKey("pressed Y", this::rightHere);
        onKey("pressed G", () -> {
            ground.show(!ground.shown());
            groundChanged();
        });
        onKey("ENTER", () -> {
            if (tool == OutlineTool.WIDTH) {
                silhouette().ifPresent(width::measure);
            }
        });
        onKey("ESCAPE", () -> {
            stroke.drop();
            pulled = Optional.empty();
            hold(Optional.empty());
        });
        onKey("CONTEXT_MENU", this::menuAtHeld);
        onKey("shift F10", this::menuAtHeld);
        bench.watch(() -> {
            pulled = Optional.empty();
            heldNode().filter(node -> node.index() >= points.nodes().size()).ifPresent(gone -> held = Optional.empty());
            changed();
        });
    }

    /** Called when the tool, or what to say, is another. */
    void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    public WidthProbe widthPlace() {
        return width;
    }

    OutlineTool tool() {
        return tool;
    }

    void take(OutlineTool another) {
        tool = another;
        tour.pause();
        held = Optional.empty();
        stroke.drop();
        if (another == OutlineTool.WIDTH) {
            silhouette().ifPresent(width::toMiddleOfBlade);
        }
        refuse("");
    }

    /** Why the last thing asked for was not done; or empty. */
    String refusal() {
        return refusal;
    }

    public void show(Optional<BackgroundImage> under) {
        picture = under;
        changed();
    }

    public GroundLinesLayer ground() {
        return ground;
    }

    /** To be called when the ground is another, or is to be shown or no longer. */
    public void groundChanged() {
        refuse(refusal);
    }

    UncertainStretchTour tour() {
        return tour;
    }

    /** Leads the eye to the next stretch, or the one before, where the trace was not sure. */
    void nextUnsure(int step) {
        lead(tour.go(step));
    }

    /** Says of the stretch that the eye was led to that the outline is right there, and goes to the next. */
    void rightHere() {
        if (tour.present().isPresent()) {
            lead(tour.done());
        }
    }

    private void lead(Optional<Rectangle2D> to) {
        held = Optional.empty();
        to.ifPresentOrElse(this::lookAt, this::fit);
        requestFocusInWindow();
        refuse("");
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return picture.map(BackgroundImage::extent)
                .or(() -> silhouette()
                        .map(s -> AnnotationPainter.path(s.outline().sampled(1)).getBounds2D()));
    }

    @Override
    protected void paint(Graphics2D g, Viewport at) {
        picture.ifPresent(p -> p.paint(g, at));
        picture.ifPresent(p -> ground.paint(g, at, p));
        silhouette().ifPresent(s -> paint(new OutlinePainter(g, at, getWidth(), getHeight()), s));
    }

    private void paint(OutlinePainter ink, Silhouette s) {
        Polyline curve = s.outline().sampled(STEP_MM);
        bench.job()
                .unsure()
                .forEach(u -> ink.unsure(u.along(curve), tour.present().equals(Optional.of(u))));
        ink.outline(s);
        bench.job().calipers().forEach(caliper -> ink.caliper(caliper, s));
        if (tool == OutlineTool.WIDTH) {
            width.paint(ink, s);
        }
        if (tool == OutlineTool.POINTS) {
            List<OutlineNode> nodes = s.outline().nodes();
            for (int i = 0; i < nodes.size(); i++) {
                ink.node(nodes.get(i), held.equals(Optional.of(new MovableNode(i))));
            }
        }
        stroke.paint(ink);
        for (MovableLandmark place : MovableLandmark.on(s)) {
            ink.place(place, s, held.equals(Optional.of(place)));
        }
        ink.legend(bench.job()
                .trace()
                .map(t -> String.format(
                        Locale.ROOT,
                        "95 of 100 places within %.2f mm",
                        t.error().error95Mm()))
                .orElse(""));
    }

    @Override
    protected boolean grab(Point mm, double reachMm) {
        refuse("");
        held = near(mm, reachMm);
        if (held.isPresent() || silhouette().isEmpty()) {
            return held.isPresent();
        }
        if (tool == OutlineTool.REDRAW) {
            stroke.begin(mm);
        } else if (tool == OutlineTool.WIDTH) {
            width.to(mm.x());
            silhouette().ifPresent(width::measure);
        }
        return tool == OutlineTool.REDRAW;
    }

    @Override
    protected void drag(Point mm) {
        if (stroke.drawing()) {
            stroke.add(mm);
        } else {
            pulled = silhouette().flatMap(s -> held.map(grip -> grip.pulled(s, mm)));
        }
    }

    @Override
    protected void letGo() {
        if (stroke.drawing()) {
            held = Optional.empty();
            stroke.letGo(reachMm());
        } else {
            pulled.ifPresent(s -> bench.change(job -> job.withSilhouette(s)));
        }
    }

    @Override
    protected boolean over(Point mm, double reachMm) {
        return near(mm, reachMm).isPresent();
    }

    @Override
    protected void hover(Point mm) {
        if (tool == OutlineTool.WIDTH) {
            width.to(mm.x());
            repaint();
        }
    }

    @Override
    protected boolean doubleClicked(Point mm, double reachMm) {
        if (tool == OutlineTool.POINTS && !over(mm, reachMm) && onLine(mm, reachMm)) {
            holdIf(points.add(mm));
            return true;
        }
        return tool == OutlineTool.REDRAW || over(mm, reachMm);
    }

    @Override
    protected Optional<JPopupMenu> menuAt(Point mm, double reachMm) {
        JPopupMenu menu = new JPopupMenu();
        if (silhouette().isEmpty()) {
            return Optional.empty();
        }
        Optional<MovableNode> node = points.nearest(mm, reachMm);
        if (node.isPresent()) {
            take(OutlineTool.POINTS);
            hold(Optional.of(node.get()));
            boolean sharp = points.node(node.get()).sharp();
            menu.add(new RunnableAction(
                    sharp ? "Make it &smooth" : "Make it a &corner", "", () -> points.turn(node.get())));
            menu.add(new RunnableAction("&Remove this point", "", () -> holdIf(points.remove(node.get()))));
            menu.add(new RunnableAction("Pull to the &edge here", "", this::pullToEdge));
        } else if (onLine(mm, reachMm)) {
            menu.add(new RunnableAction("&Add a point here", "", () -> {
                take(OutlineTool.POINTS);
                holdIf(points.add(mm));
            }));
        }
        addGuardActs(menu, mm, reachMm);
        tour.present()
                .ifPresent(stretch -> menu.add(new RunnableAction("The outline is r&ight here", "", this::rightHere)));
        return menu.getComponentCount() == 0 ? Optional.empty() : Optional.of(menu);
    }

    private void addGuardActs(JPopupMenu menu, Point mm, double reachMm) {
        Silhouette now = silhouette().orElseThrow();
        if (now.landmarks().guard().isPresent()) {
            menu.add(new RunnableAction("There is n&o guard", "", () -> {
                held = Optional.empty();
                points.edit(null, s -> s.withGuard(Optional.empty()));
            }));
        } else if (onLine(mm, reachMm)) {
            double fromTip = now.landmarks().tip().x() - mm.x();
            menu.add(new RunnableAction(
                    "Mark a &guard here",
                    "",
                    () -> points.edit(null, s -> s.withGuardFromTip(fromTip - GUARD_MM / 2, fromTip + GUARD_MM / 2))));
        }
    }

    /** The key that takes hold of a landmark. */
    private static char key(MovableLandmark place) {
        return switch (place) {
            case TIP -> 'T';
            case HEEL -> 'H';
            case SPINE -> 'S';
            case BUTT -> 'B';
            case GUARD_FRONT -> 'F';
            case GUARD_BACK -> 'K';
        };
    }

    private boolean isThere(MovableLandmark place) {
        return silhouette().filter(place::isOn).isPresent();
    }

    private void menuAtHeld() {
        silhouette().flatMap(s -> held.map(grip -> grip.of(s))).ifPresent(this::openMenu);
    }

    /** The outline as it is to be drawn. */
    private Optional<Silhouette> silhouette() {
        return pulled.or(() -> bench.job().silhouette());
    }

    private Polyline curve() {
        return bench.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
    }

    private Optional<MovablePoint> near(Point mm, double reachMm) {
        Optional<MovablePoint> node =
                tool == OutlineTool.POINTS ? points.nearest(mm, reachMm).map(n -> n) : Optional.empty();
        boolean marks = tool == OutlineTool.MARKS || tool == OutlineTool.POINTS;
        return node.or(() -> marks ? nearestPlace(mm, reachMm) : Optional.empty());
    }

    private Optional<MovablePoint> nearestPlace(Point mm, double reachMm) {
        return silhouette()
                .flatMap(s -> MovableLandmark.on(s).stream()
                        .filter(place -> place.of(s).distance(mm) <= reachMm)
                        .min(Comparator.comparingDouble(place -> place.of(s).distance(mm))));
    }

    private boolean onLine(Point mm, double reachMm) {
        Polyline curve = curve();
        return curve.at(curve.stationOf(mm)).distance(mm) <= reachMm;
    }

    private void hold(Optional<MovablePoint> grip) {
        held = grip;
        refuse("");
    }

    private void holdIf(Optional<MovableNode> node) {
        node.ifPresent(n -> hold(Optional.of(n)));
    }

    private Optional<MovableNode> heldNode() {
        return held.map(grip -> grip instanceof MovableNode node ? node : null);
    }

    /** On from point to point round the outline; begins with the one nearest to the middle of the drawing. */
    private void step(int step) {
        if (points.nodes().isEmpty()) {
            return;
        }
        if (tool != OutlineTool.POINTS) {
            take(OutlineTool.POINTS);
        }
        holdIf(heldNode()
                .map(node -> points.next(node, step))
                .or(() -> points.nearest(viewport().centre(), Double.MAX_VALUE)));
    }

    private void arrow(int right, int up, boolean far) {
        if (tool == OutlineTool.WIDTH) {
            width.stride(right, far);
            repaint();
        } else if (held.isPresent() && held.get() instanceof MovableLandmark place && right != 0) {
            double mm = -right * (far ? FAR_NUDGE_MM : NUDGE_MM);
            points.edit("nudge " + place, s -> place.nudged(s, mm));
        } else {
            double mm = far ? FAR_POINT_NUDGE_MM : POINT_NUDGE_MM;
            heldNode()
                    .ifPresent(node -> points.edit(
                            "nudge " + node, s -> node.pulled(s, node.of(s).plus(new Point(right * mm, up * mm)))));
        }
    }

    /** The outline about the held point, or at the unsure stretch, sent to the edge near it. */
    private void pullToEdge() {
        heldNode()
                .map(node -> points.between(points.next(node, -1), points.next(node, 1)))
                .or(() -> tour.present().map(this::aboutUnsure))
                .ifPresent(stretch -> {
                    held = Optional.empty();
                    stroke.send(stretch, PULL_REACH_MM);
                });
    }

    private Polyline aboutUnsure(UncertainStretch unsure) {
        Polyline curve = curve();
        return curve.stretch(
                curve.stationOf(unsure.from()) - RedrawStroke.LEAST_MM,
                curve.stationOf(unsure.to()) + RedrawStroke.LEAST_MM);
    }

    private void refuse(String why) {
        refusal = why;
        List.copyOf(watchers).forEach(Runnable::run);
        repaint();
    }
}
