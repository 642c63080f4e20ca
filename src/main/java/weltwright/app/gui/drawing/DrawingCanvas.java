package weltwright.app.gui.drawing;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.JPopupMenu;
import javax.swing.KeyStroke;
import javax.swing.UIManager;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.units.LengthUnit;
import weltwright.units.MeasureUnit;

/**
 * A component that shows a drawing in mm, y up, and that can be zoomed (wheel or pinch, + and −), panned (drag with the
 * middle button or beside what can be dragged, wheel with Shift, arrow keys, also with Ctrl) and zoomed to fit (0 or a
 * double click). It shows its zoom and, where it has a unit, rulers and a measuring tape (L). It fits the drawing again
 * at each change of its size until the user zooms or pans. While something is dragged, the drawing keeps its place on
 * the screen, even where the component is moved or resized by its layout.
 */
public abstract class DrawingCanvas extends JComponent {
    // The zoom factor and the sizes in px at 96 dpi are chosen by eye.
    private static final double ZOOM_STEP = 1.25;
    private static final int MARGIN_PX = 28;
    private static final float HIT_RADIUS_PX = 12;
    protected static final int KEY_PAN_PX = 60;
    private static final int WHEEL_PAN_PX = 40;
    private static final float ZOOM_AWAY_PX = 8;

    private Viewport viewport = new Viewport(1, new Point(0, 0), 1, 1);
    private final MeasuringTape tape = new MeasuringTape();
    private final List<Runnable> tapeListeners = new ArrayList<>();
    private boolean fitted = true;
    private Optional<Point> mousePx = Optional.empty();
    /**
     * Location of the component on the screen when the drag began or the viewport was last updated; empty without a
     * drag.
     */
    private Optional<java.awt.Point> dragOrigin = Optional.empty();

    public DrawingCanvas() {
        setFocusable(true);
        setMinimumSize(new Dimension(200, 150));
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                updateViewport();
            }

            @Override
            public void componentMoved(ComponentEvent e) {
                updateViewport();
            }
        });
        addFocusListener(new FocusAdapter() {
            @Override
            public void focusGained(FocusEvent e) {
                repaint();
            }

            @Override
            public void focusLost(FocusEvent e) {
                repaint();
            }
        });
        Mouse mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addMouseWheelListener(mouse);
        for (String key : new String[] {"typed +", "typed =", "ADD"}) {
            bindKey(key, () -> zoom(ZOOM_STEP));
        }
        for (String key : new String[] {"typed -", "SUBTRACT"}) {
            bindKey(key, () -> zoom(1 / ZOOM_STEP));
        }
        bindKey("typed 0", this::zoomToFit);
        bindKey("pressed L", () -> setTapeInHand(!tape.isInHand()));
        bindKey("LEFT", () -> pan(KEY_PAN_PX, 0));
        bindKey("RIGHT", () -> pan(-KEY_PAN_PX, 0));
        bindKey("UP", () -> pan(0, KEY_PAN_PX));
        bindKey("DOWN", () -> pan(0, -KEY_PAN_PX));
        bindKey("ctrl LEFT", () -> pan(KEY_PAN_PX, 0));
        bindKey("ctrl RIGHT", () -> pan(-KEY_PAN_PX, 0));
        bindKey("ctrl UP", () -> pan(0, KEY_PAN_PX));
        bindKey("ctrl DOWN", () -> pan(0, -KEY_PAN_PX));
    }

    /** Returns the extent of the drawing in mm; empty where it is empty. */
    protected abstract Optional<Rectangle2D> extent();

    /** Returns the margins in px that stay free where the drawing is zoomed to fit. */
    protected Insets margins() {
        int margin = UIScale.scale(MARGIN_PX);
        return new Insets(margin + rulerPx(), margin + rulerPx(), margin, margin);
    }

    /** Returns the unit of the rulers and of the tape; empty where the drawing is not to scale and has none. */
    protected Optional<MeasureUnit> rulerUnit() {
        return Optional.empty();
    }

    /** Returns the width of the rulers at the upper and the left side in px; 0 where there are none. */
    protected final int rulerPx() {
        return rulerUnit().isPresent() ? RulerPainter.widthPx() : 0;
    }

    /** Returns the zoom as it is shown: 1 where the drawing is true to size on the screen. */
    protected double zoomShown() {
        return viewport.pxPerMm() * LengthUnit.INCH.inMm() / getToolkit().getScreenResolution();
    }

    /** Returns whether the mouse draws the measuring tape. */
    public final boolean isTapeInHand() {
        return tape.isInHand();
    }

    /** Takes the measuring tape in hand or puts it away, in a drawing that is to scale. */
    public final void setTapeInHand(boolean wanted) {
        tape.setInHand(wanted && rulerUnit().isPresent());
        List.copyOf(tapeListeners).forEach(Runnable::run);
        repaint();
    }

    /** Returns what the tape measures, in mm; empty before it was drawn. */
    final Optional<Double> tapeMm() {
        return tape.lengthMm();
    }

    /** Adds a listener that is called whenever the tape was taken in hand or put away. */
    public final void addTapeListener(Runnable listener) {
        tapeListeners.add(listener);
    }

    /**
     * Paints the drawing.
     *
     * @param g in px of the component
     * @param viewport maps mm to px
     */
    protected abstract void paintDrawing(Graphics2D g, Viewport viewport);

    /**
     * Begins to drag what lies within {@code hitRadiusMm} of a point.
     *
     * @return whether there is such a thing; else dragging pans the drawing
     */
    protected boolean beginDrag(Point mm, double hitRadiusMm) {
        return false;
    }

    /** Called as the mouse is dragged after {@link #beginDrag}. */
    protected void dragTo(Point mm) {}

    /** Called as the mouse button is released after {@link #beginDrag}. */
    protected void endDrag() {}

    /** Returns whether {@link #beginDrag} finds something at a point; the mouse cursor shows it. */
    protected boolean isDraggableAt(Point mm, double hitRadiusMm) {
        return false;
    }

    /** Called as the mouse moves without a pressed button. */
    protected void mouseMovedTo(Point mm) {}

    /**
     * Handles a double click.
     *
     * @return whether it was handled; else the drawing is zoomed to fit
     */
    protected boolean doubleClicked(Point mm, double hitRadiusMm) {
        return isDraggableAt(mm, hitRadiusMm);
    }

    /** Returns the popup menu for a point; empty where there is none. */
    protected Optional<JPopupMenu> popupMenuAt(Point mm, double hitRadiusMm) {
        return Optional.empty();
    }

    public final Viewport viewport() {
        return viewport;
    }

    public final void zoomToFit() {
        fitted = true;
        updateViewport();
    }

    public final void zoomIn() {
        zoom(ZOOM_STEP);
    }

    public final void zoomOut() {
        zoom(1 / ZOOM_STEP);
    }

    /** Zooms to an area in mm. */
    protected final void zoomTo(Rectangle2D target) {
        setViewport(Viewport.fit(target, getWidth(), getHeight(), margins()));
    }

    /** Shows the popup menu for a point, if there is one. */
    protected final void showPopupMenu(Point mm) {
        Point px = viewport.toPx(mm);
        popupMenuAt(mm, hitRadiusMm()).ifPresent(menu -> menu.show(this, (int) px.x(), (int) px.y()));
    }

    /** To be called when the drawing or its extent has changed: fits it again where it was fitted, and repaints it. */
    protected final void contentChanged() {
        updateViewport();
    }

    /**
     * Binds a key to an action while the canvas has the focus.
     *
     * @param keyStroke as {@link KeyStroke#getKeyStroke(String)} reads it
     */
    public final void bindKey(String keyStroke, Runnable action) {
        getInputMap().put(KeyStroke.getKeyStroke(keyStroke), keyStroke);
        getActionMap().put(keyStroke, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                action.run();
            }
        });
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.CANVAS;
                }
            };
        }
        return accessibleContext;
    }

    @Override
    protected final void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setColor(ThemeColors.canvas());
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setFont(UIManager.getFont("Label.font"));
        paintDrawing(g, viewport);
        rulerUnit().ifPresent(unit -> {
            tape.paint(g, viewport, unit);
            new RulerPainter(g, viewport, unit).paint(mousePx);
            g.setFont(UIManager.getFont("Label.font"));
        });
        paintZoom(g);
        if (isFocusOwner()) {
            g.setColor(UIManager.getColor("Component.focusColor"));
            g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
        }
        g.dispose();
    }

    private void paintZoom(Graphics2D g) {
        if (extent().isPresent()) {
            String zoom = Math.round(100 * zoomShown()) + " %";
            double width = g.getFontMetrics().stringWidth(zoom);
            double away = UIScale.scale(ZOOM_AWAY_PX);
            AnnotationPainter.paintLabel(g, zoom, getWidth() - width - 2 * away, rulerPx() + away);
        }
    }

    private void updateViewport() {
        Viewport before = viewport;
        viewport = before.withSize(getWidth(), getHeight());
        if (dragOrigin.isPresent() && isShowing()) {
            java.awt.Point position = getLocationOnScreen();
            java.awt.Point origin = dragOrigin.get();
            viewport = viewport.panned(
                    origin.x - position.x - (getWidth() - before.widthPx()) / 2,
                    origin.y - position.y - (getHeight() - before.heightPx()) / 2);
            dragOrigin = Optional.of(position);
        } else if (fitted) {
            extent().ifPresent(extent -> viewport = Viewport.fit(extent, getWidth(), getHeight(), margins()));
        }
        repaint();
    }

    /** Returns the greatest distance in mm between the mouse and what it hits. */
    protected final double hitRadiusMm() {
        return UIScale.scale(HIT_RADIUS_PX) / viewport.pxPerMm();
    }

    private void zoom(double factor) {
        setViewport(viewport.zoomed(factor, new Point(getWidth() / 2.0, getHeight() / 2.0)));
    }

    /** Moves the drawing. */
    protected final void pan(double rightPx, double downPx) {
        setViewport(viewport.panned(rightPx, downPx));
    }

    private void setViewport(Viewport target) {
        fitted = false;
        viewport = target;
        repaint();
    }

    private final class Mouse extends MouseAdapter {
        private @Nullable Point lastPx;

        @Override
        public void mousePressed(MouseEvent e) {
            requestFocusInWindow();
            lastPx = px(e);
            if (e.isPopupTrigger()) {
                showPopupMenu(viewport.toMm(lastPx));
                return;
            }
            if (e.getButton() != MouseEvent.BUTTON1) {
                return;
            }
            if (tape.isInHand()) {
                tape.begin(viewport.toMm(lastPx));
            } else if (beginDrag(viewport.toMm(lastPx), hitRadiusMm())) {
                dragOrigin = Optional.of(getLocationOnScreen());
            }
            repaint();
        }

        @Override
        public void mouseDragged(MouseEvent e) {
            Point position = px(e);
            mousePx = Optional.of(position);
            if (tape.isDrawing()) {
                tape.drawTo(viewport.toMm(position));
                repaint();
            } else if (dragOrigin.isPresent()) {
                dragTo(viewport.toMm(position));
                repaint();
            } else if (lastPx != null) {
                pan(position.x() - lastPx.x(), position.y() - lastPx.y());
            }
            lastPx = position;
        }

        @Override
        public void mouseReleased(MouseEvent e) {
            tape.end();
            if (e.isPopupTrigger()) {
                showPopupMenu(viewport.toMm(px(e)));
            } else if (dragOrigin.isPresent()) {
                dragOrigin = Optional.empty();
                endDrag();
                updateViewport();
            }
        }

        @Override
        public void mouseClicked(MouseEvent e) {
            boolean doubleClick = e.getButton() == MouseEvent.BUTTON1 && e.getClickCount() == 2;
            if (doubleClick && !doubleClicked(viewport.toMm(px(e)), hitRadiusMm())) {
                zoomToFit();
            }
        }

        @Override
        public void mouseMoved(MouseEvent e) {
            Point mm = viewport.toMm(px(e));
            mouseMovedTo(mm);
            boolean draggable = isDraggableAt(mm, hitRadiusMm());
            setCursor(Cursor.getPredefinedCursor(
                    tape.isInHand()
                            ? Cursor.CROSSHAIR_CURSOR
                            : draggable ? Cursor.HAND_CURSOR : Cursor.DEFAULT_CURSOR));
            showMouseAt(Optional.of(px(e)));
        }

        @Override
        public void mouseExited(MouseEvent e) {
            showMouseAt(Optional.empty());
        }

        /** Moves the pointers of the rulers. */
        private void showMouseAt(Optional<Point> px) {
            mousePx = px;
            int width = rulerPx();
            if (width > 0) {
                repaint(0, 0, getWidth(), width + 1);
                repaint(0, 0, width + 1, getHeight());
            }
        }

        @Override
        public void mouseWheelMoved(MouseWheelEvent e) {
            if (e.isShiftDown()) {
                pan(-e.getPreciseWheelRotation() * UIScale.scale(WHEEL_PAN_PX), 0);
            } else {
                setViewport(viewport.zoomed(Math.pow(ZOOM_STEP, -e.getPreciseWheelRotation()), px(e)));
            }
        }

        private static Point px(MouseEvent e) {
            return new Point(e.getX(), e.getY());
        }
    }
}
