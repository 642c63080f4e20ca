package weltwright.app.gui.leather;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.layout.ManualLayout;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;

/**
 * Shows the layouts and has their pieces moved: by the mouse, turned by a knob, or by keys. A piece comes to rest
 * against its neighbours and the edge. Where it would lie over something it is shown refused, and goes back.
 */
final class LayoutCanvas extends DrawingCanvas {
    // Chosen by eye, in px at 96 dpi, mm and degrees.
    private static final float SNAP_PX = 14;
    private static final double MOST_SNAP_MM = 20;
    private static final double KEY_MM = 1;
    private static final double FAST_KEY_MM = 10;
    private static final double FINE_TURN_DEG = 1;
    private static final float KNOB_DISTANCE_PX = 26;
    private static final int LABEL_PX = 12;

    private final LayoutModel model;
    private final transient Messages messages = Messages.of(LayoutCanvas.class);
    private final transient LayoutPainter painter = new LayoutPainter();
    private final transient StillImage still = new StillImage();
    private final transient Consumer<String> refusalListener;
    private transient List<StockLayout> layouts = List.of();
    private transient List<StockDrawing> drawings = List.of();
    private transient List<String> labels = List.of();
    private transient String emptyText = "";
    private transient Optional<Selection> selection = Optional.empty();
    private transient Optional<Drag> drag = Optional.empty();
    private boolean movable;
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;

    /** The selected piece, by the numbers of its layout and of it. */
    private record Selection(int layout, int piece) {}

    /**
     * A piece in the hand.
     *
     * @param from where it lay
     * @param grip what was gripped: a point of the drawing
     * @param turning whether it is turned about its middle rather than moved
     * @param now where it is
     * @param free whether it may lie there
     */
    private record Drag(
            ManualLayout layout, RigidMotion from, Point grip, boolean turning, RigidMotion now, boolean free) {
        Drag at(Optional<RigidMotion> place, RigidMotion wanted) {
            return new Drag(layout, from, grip, turning, place.orElse(wanted), place.isPresent());
        }
    }

    /** @param refusalListener receives why a piece was not moved; the empty text where it was */
    LayoutCanvas(LayoutModel model, Consumer<String> refusalListener) {
        this.model = model;
        this.refusalListener = refusalListener;
        setName("layout drawing");
        getAccessibleContext().setAccessibleName(messages.text("canvas.name"));
        for (String[] key :
                new String[][] {{"LEFT", "-1", "0"}, {"RIGHT", "1", "0"}, {"UP", "0", "1"}, {"DOWN", "0", "-1"}}) {
            Point direction = new Point(Double.parseDouble(key[1]), Double.parseDouble(key[2]));
            bindKey(key[0], () -> push(direction.times(KEY_MM)));
            bindKey("shift " + key[0], () -> push(direction.times(FAST_KEY_MM)));
        }
        bindKey("typed r", this::turnOn);
        bindKey("typed R", this::turnOn);
        bindKey("typed ,", () -> turnBy(Math.toRadians(FINE_TURN_DEG)));
        bindKey("typed .", () -> turnBy(-Math.toRadians(FINE_TURN_DEG)));
        bindKey("typed n", () -> select(1));
        bindKey("typed p", () -> select(-1));
        bindKey("ESCAPE", this::letGo);
    }

    /**
     * Shows layouts.
     *
     * @param newLabels for the chip: one for all, then one for each of several layouts
     * @param newMovable whether pieces can be moved
     */
    void show(List<StockLayout> newLayouts, List<String> newLabels, String newEmptyText, boolean newMovable) {
        labels = newLabels;
        emptyText = newEmptyText;
        movable = newMovable;
        if (drag.isPresent()) {
            return; // nothing moves under the hand
        }
        if (!newLayouts.equals(layouts)) {
            boolean otherStock = !stocks(newLayouts).equals(stocks(layouts));
            layouts = newLayouts;
            drawings = StockDrawing.of(newLayouts);
            selection = selection.filter(at -> at.layout < layouts.size()
                    && at.piece < layouts.get(at.layout).pieces().size());
            getAccessibleContext().setAccessibleDescription(String.join(" ", newLabels));
            if (otherStock) {
                selection = Optional.empty();
                zoomToFit();
            }
        }
        contentChanged();
    }

    private static List<Object> stocks(List<StockLayout> layouts) {
        return layouts.stream().<Object>map(StockLayout::stock).toList();
    }

    void setUnit(MeasureUnit newUnit) {
        unit = newUnit;
        repaint();
    }

    /** Whether no layout is shown. */
    boolean isEmpty() {
        return drawings.isEmpty();
    }

    /** The middle of a piece, in the drawing's frame. */
    Point middleOf(int layout, int piece) {
        return LayoutPainter.middle(layouts.get(layout).pieces().get(piece).outline())
                .plus(drawings.get(layout).shift());
    }

    /** Whether a piece is selected that can be moved. */
    boolean hasSelection() {
        return movable && selection.isPresent();
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return drawings.stream().map(StockDrawing::extent).reduce(Rectangle2D::createUnion);
    }

    /** Leaves room for the chip above and the sizes below and at the left. */
    @Override
    protected Insets margins() {
        Insets free = super.margins();
        return new Insets(
                free.top + UIScale.scale(34),
                free.left + UIScale.scale(68),
                free.bottom + UIScale.scale(40),
                free.right);
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        if (drag.isPresent()) {
            List<Object> key = List.of(viewport, drawings, selection, unit, ThemeColors.canvas());
            still.paint(g, getWidth(), getHeight(), key, on -> paintStill(on, viewport));
        } else {
            paintStill(g, viewport);
        }
        selection.ifPresent(at -> paintSelected(g, viewport, at));
        if (drawings.isEmpty()) {
            AnnotationPainter.paintPlaceholder(g, emptyText, getWidth(), getHeight());
        } else if (!labels.isEmpty()) {
            AnnotationPainter.paintLabel(g, labels.get(0), LABEL_PX, LABEL_PX);
            LayoutPainter.paintStretch(g, messages.text("canvas.stretch"), getHeight() - LABEL_PX);
        }
    }

    /** Paints all but the selected piece. */
    private void paintStill(Graphics2D g, Viewport viewport) {
        for (int k = 0; k < drawings.size(); k++) {
            StockDrawing drawing = drawings.get(k);
            painter.paintStock(g, viewport, drawing, unit);
            List<PlacedPiece> pieces = drawing.layout().pieces();
            for (int i = 0; i < pieces.size(); i++) {
                if (!selection.equals(Optional.of(new Selection(k, i)))) {
                    painter.paintPiece(
                            g,
                            viewport,
                            pieces.get(i),
                            drawing.pieces().get(i),
                            drawing.shift(),
                            LayoutPainter.State.PLAIN);
                }
            }
            if (drawings.size() > 1 && k + 1 < labels.size()) {
                Point corner = viewport.toPx(
                        new Point(drawing.extent().getMinX(), drawing.extent().getMaxY()));
                AnnotationPainter.paintLabel(
                        g,
                        labels.get(k + 1),
                        corner.x(),
                        corner.y() - g.getFontMetrics().getHeight() - 6);
            }
        }
    }

    private void paintSelected(Graphics2D g, Viewport viewport, Selection at) {
        StockDrawing drawing = drawings.get(at.layout);
        PlacedPiece lying = drawing.layout().pieces().get(at.piece);
        PlacedPiece shown = drag.map(held -> new PlacedPiece(lying.piece(), lying.sheath(), held.now))
                .orElse(lying);
        boolean refused = drag.isPresent() && !drag.get().free;
        painter.paintPiece(
                g,
                viewport,
                shown,
                StockDrawing.shape(shown, drawing.shift()),
                drawing.shift(),
                refused ? LayoutPainter.State.REFUSED : LayoutPainter.State.SELECTED);
        if (movable) {
            LayoutPainter.paintKnob(
                    g, viewport, LayoutPainter.middle(shown.outline()).plus(drawing.shift()), knob(drawing, shown));
        }
    }

    /** The place of the knob above a piece. */
    private Point knob(StockDrawing drawing, PlacedPiece piece) {
        var extent = piece.outline().polygon().getEnvelopeInternal();
        double up =
                extent.getMaxY() + UIScale.scale(KNOB_DISTANCE_PX) / viewport().pxPerMm();
        return new Point(extent.centre().x, up).plus(drawing.shift());
    }

    @Override
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return movable && (isOnKnob(mm, hitRadiusMm) || find(mm).isPresent());
    }

    private boolean isOnKnob(Point mm, double hitRadiusMm) {
        return selection
                .map(at -> knob(drawings.get(at.layout), piece(at)).distance(mm) < hitRadiusMm)
                .orElse(false);
    }

    private PlacedPiece piece(Selection at) {
        return layouts.get(at.layout).pieces().get(at.piece);
    }

    private Optional<Selection> find(Point mm) {
        for (int k = 0; k < drawings.size(); k++) {
            OptionalInt piece = drawings.get(k).pieceAt(mm);
            if (piece.isPresent()) {
                return Optional.of(new Selection(k, piece.getAsInt()));
            }
        }
        return Optional.empty();
    }

    /** A double click selects a piece as a click does. */
    @Override
    protected boolean doubleClicked(Point mm, double hitRadiusMm) {
        return isDraggableAt(mm, hitRadiusMm);
    }

    @Override
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        if (!movable) {
            return false;
        }
        boolean turning = isOnKnob(mm, hitRadiusMm);
        if (!turning) {
            selection = find(mm);
        }
        selection.ifPresent(at -> {
            model.hold(true);
            RigidMotion from = piece(at).motion();
            drag = Optional.of(new Drag(model.manual(at.layout), from, mm, turning, from, true));
        });
        refusalListener.accept("");
        return drag.isPresent();
    }

    @Override
    protected void dragTo(Point mm) {
        Selection at = selection.orElseThrow();
        drag = drag.map(held -> {
            RigidMotion wanted = held.turning ? turnedTo(held, at, mm) : shifted(held.from, mm.minus(held.grip));
            return wanted.equals(held.from)
                    ? held.at(Optional.of(held.from), held.from)
                    : held.at(held.layout.nearestFree(at.piece, wanted, snapMm()), wanted);
        });
    }

    private RigidMotion turnedTo(Drag held, Selection at, Point mm) {
        PlacedPiece piece = piece(at);
        Point middle = LayoutPainter.middle(piece.outline())
                .plus(drawings.get(at.layout).shift());
        double turn = angle(mm.minus(middle)) - angle(held.grip.minus(middle));
        double allowed = held.layout.allowedTurn(at.piece, held.from.angleRad() + turn);
        return turned(piece, allowed);
    }

    private static double angle(Point v) {
        return Math.atan2(v.y(), v.x());
    }

    private static RigidMotion shifted(RigidMotion motion, Point by) {
        return new RigidMotion(motion.angleRad(), motion.shift().plus(by));
    }

    /** The place of a piece turned about its middle to another angle. */
    private static RigidMotion turned(PlacedPiece piece, double angleRad) {
        Point middle = LayoutPainter.middle(piece.outline());
        Point inPiece = piece.motion().inverse().apply(middle);
        Point rotated = new RigidMotion(angleRad, new Point(0, 0)).apply(inPiece);
        return new RigidMotion(angleRad, middle.minus(rotated));
    }

    private double snapMm() {
        return Math.min(MOST_SNAP_MM, UIScale.scale(SNAP_PX) / viewport().pxPerMm());
    }

    @Override
    protected void endDrag() {
        Selection at = selection.orElseThrow();
        Drag held = drag.orElseThrow();
        drag = Optional.empty();
        if (!held.free) {
            refusalListener.accept(
                    messages.text("canvas.refused", piece(at).piece().piece().name()));
        } else if (!held.now.equals(held.from)) {
            model.moveByHand(null, at.layout, held.layout.moved(at.piece, held.now));
        }
        model.refresh();
    }

    private void letGo() {
        if (drag.isPresent()) {
            drag = drag.map(held -> held.at(Optional.of(held.from), held.from));
        } else {
            selection = Optional.empty();
        }
        repaint();
    }

    private void select(int step) {
        List<Selection> all = new ArrayList<>();
        for (int k = 0; k < layouts.size(); k++) {
            for (int i = 0; i < layouts.get(k).pieces().size(); i++) {
                all.add(new Selection(k, i));
            }
        }
        if (movable && !all.isEmpty()) {
            int next = selection.map(at -> all.indexOf(at) + step).orElse(step > 0 ? 0 : -1);
            selection = Optional.of(all.get(Math.floorMod(next, all.size())));
            getAccessibleContext()
                    .setAccessibleDescription(
                            piece(selection.get()).piece().piece().name());
            repaint();
        }
    }

    private void push(Point by) {
        edit("push", (layout, at) -> layout.pushed(at.piece, by));
    }

    /** Turns the selected piece on: by a quarter turn, or by a half one where a quarter is not allowed. */
    void turnOn() {
        edit(null, (layout, at) -> {
            double now = piece(at).motion().angleRad();
            double quarter = now + Math.PI / 2;
            boolean allowed =
                    Math.abs(Math.IEEEremainder(layout.allowedTurn(at.piece, quarter) - quarter, 2 * Math.PI)) < 1e-6;
            return layout.nearestFree(
                    at.piece,
                    turned(piece(at), layout.allowedTurn(at.piece, allowed ? quarter : now + Math.PI)),
                    MOST_SNAP_MM);
        });
    }

    private void turnBy(double rad) {
        edit("turn", (layout, at) -> {
            RigidMotion wanted = turned(
                    piece(at), layout.allowedTurn(at.piece, piece(at).motion().angleRad() + rad));
            return layout.isFree(at.piece, wanted)
                    ? Optional.of(wanted)
                    : layout.nearestFree(at.piece, wanted, snapMm());
        });
    }

    /** A change of the selected piece's place; empty where it is refused. */
    private interface PlaceEdit {
        Optional<RigidMotion> apply(ManualLayout layout, Selection at);
    }

    /** @param mergeKey equal for keys whose moves are undone together; null for a step of its own */
    private void edit(@Nullable String mergeKey, PlaceEdit edit) {
        if (!hasSelection() || drag.isPresent()) {
            return;
        }
        Selection at = selection.orElseThrow();
        model.hold(true);
        ManualLayout layout = model.manual(at.layout);
        Optional<RigidMotion> place = edit.apply(layout, at);
        refusalListener.accept(
                place.isPresent()
                        ? ""
                        : messages.text(
                                "canvas.refused", piece(at).piece().piece().name()));
        place.filter(to -> !to.equals(piece(at).motion()))
                .ifPresent(to -> model.moveByHand(
                        mergeKey == null ? null : List.of(mergeKey, at), at.layout, layout.moved(at.piece, to)));
    }
}
