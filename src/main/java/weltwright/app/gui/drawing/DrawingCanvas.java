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

/**
 * A drawing in mm that can be zoomed (wheel, + and −), moved (drag, or Ctrl and arrow keys) and fitted to the window (0
 * or a double click). It stays fitted while the window is resized, until the user chooses a part of it; but it never
 * moves under a hand that holds something of it, even where words above it take more lines.
 */
public abstract class DrawingCanvas extends JComponent {
    private static final double ZOOM_STEP = 1.25;
    private static final int MARGIN_PX = 28;
    private static final float REACH_PX = 12;
    private static final int KEY_PAN_PX = 60;

    private Viewport viewport = new Viewport(1, new Point(0, 0), 1, 1);
    private boolean fitted = true;
    /** Where on the screen the component was when something was taken hold of, or when it last followed since. */
    private Optional<java.awt.Point> heldAt = Optional.empty();

    public DrawingCanvas() {
        setFocusable(true);
        setMinimumSize(new Dimension(200, 150));
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                follow();
            }

            @Override
            public void componentMoved(ComponentEvent e) {
                follow();
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
            onKey(key, () -> zoom(ZOOM_STEP));
        }
        for (String key : new String[] {"typed -", "SUBTRACT"}) {
            onKey(key, () -> zoom(1 / ZOOM_STEP));
        }
        onKey("typed 0", this::fit);
        onKey("ctrl LEFT", () -> pan(KEY_PAN_PX, 0));
        onKey("ctrl RIGHT", () -> pan(-KEY_PAN_PX, 0));
        onKey("ctrl UP", () -> pan(0, KEY_PAN_PX));
        onKey("ctrl DOWN", () -> pan(0, -KEY_PAN_PX));
    }

    /** What there is to see, in mm; empty where there is nothing. */
    protected abstract Optional<Rectangle2D> extent();

    /** How many pixels stay free on each side where all of it is seen. */
    protected Insets free() {
        int margin = UIScale.scale(MARGIN_PX);
        return new Insets(margin, margin, margin, margin);
    }

    /** Paints it; pixels are those of the component, {@code at} says where a place in mm falls. */
    protected abstract void paint(Graphics2D g, Viewport at);

    /** Whether something to be dragged lies within {@code reachMm}; the drawing moves with the mouse where not. */
    protected boolean grab(Point mm, double reachMm) {
        return false;
    }

    /** The mouse has moved, holding what was grabbed. */
    protected void drag(Point mm) {}

    /** What was grabbed is let go. */
    protected void letGo() {}

    /** Whether the mouse is over something to be dragged. */
    protected boolean over(Point mm, double reachMm) {
        return false;
    }

    /** The mouse is here, holding nothing. */
    protected void hover(Point mm) {}

    /** Clicked twice; what is not taken fits the drawing to the window. */
    protected boolean doubleClicked(Point mm, double reachMm) {
        return over(mm, reachMm);
    }

    /** What can be done at a place, for the menu there; empty where nothing can. */
    protected Optional<JPopupMenu> menuAt(Point mm, double reachMm) {
        return Optional.empty();
    }

    public final Viewport viewport() {
        return viewport;
    }

    public final void fit() {
        fitted = true;
        follow();
    }

    public final void zoomIn() {
        zoom(ZOOM_STEP);
    }

    public final void zoomOut() {
        zoom(1 / ZOOM_STEP);
    }

    /** Shows a part of it, as large as there is room for. */
    protected final void lookAt(Rectangle2D part) {
        show(Viewport.fit(part, getWidth(), getHeight(), free()));
    }

    /** Opens the menu of a place. */
    protected final void openMenu(Point mm) {
        Point px = viewport.toPx(mm);
        menuAt(mm, reachMm()).ifPresent(menu -> menu.show(this, (int) px.x(), (int) px.y()));
    }

    /** To be called when what is drawn is another thing. */
    protected final void changed() {
        follow();
    }

    public final void onKey(String keyStroke, Runnable what) {
        getInputMap().put(KeyStroke.getKeyStroke(keyStroke), keyStroke);
        getActionMap().put(keyStroke, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                what.run();
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
        paint(g, viewport);
        if (isFocusOwner()) {
            g.setColor(UIManager.getColor("Component.focusColor"));
            g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
        }
        g.dispose();
    }

    private void follow() {
        Viewport before = viewport;
        viewport = before.sized(getWidth(), getHeight());
        if (heldAt.isPresent() && isShowing()) {
            java.awt.Point now = getLocationOnScreen();
            java.awt.Point then = heldAt.get();
            viewport = viewport.panned(
                    then.x - now.x - (getWidth() - before.widthPx()) / 2,
                    then.y - now.y - (getHeight() - before.heightPx()) / 2);
            heldAt = Optional.of(now);
        } else if (fitted) {
            extent().ifPresent(all -> viewport = Viewport.fit(all, getWidth(), getHeight(), free()));
        }
        repaint();
    }

    /** How far from a thing the mouse still takes hold of it. */
    protected final double reachMm() {
        return UIScale.scale(REACH_PX) / viewport.pxPerMm();
    }

    private void zoom(double factor) {
        show(viewport.zoomed(factor, new Point(getWidth() / 2.0, getHeight() / 2.0)));
    }

    private void pan(double rightPx, double downPx) {
        show(viewport.panned(rightPx, downPx));
    }

    private void show(Viewport part) {
        fitted = false;
        viewport = part;
        repaint();
    }

    private final class Mouse extends MouseAdapter {
        private @Nullable Point lastPx;

        @Override
        public void mousePressed(MouseEvent e) {
            requestFocusInWindow();
            lastPx = px(e);
            if (e.isPopupTrigger()) {
                openMenu(viewport.toMm(lastPx));
                return;
            }
            if (e.getButton() == MouseEvent.BUTTON1 && grab(viewport.toMm(lastPx), reachMm())) {
                heldAt = Optional.of(getLocationOnScreen());
            }
            repaint();
        }

        @Override
        public void mouseDragged(MouseEvent e) {
            Point now = px(e);
            if (heldAt.isPresent()) {
                drag(viewport.toMm(now));
                repaint();
            } else if (lastPx != null) {
                pan(now.x() - lastPx.x(), now.y() - lastPx.y());
            }
            lastPx = now;
        }

        @Override
        public void mouseReleased(MouseEvent e) {
            if (e.isPopupTrigger()) {
                openMenu(viewport.toMm(px(e)));
            } else if (heldAt.isPresent()) {
                heldAt = Optional.empty();
                letGo();
                follow();
            }
        }

        @Override
        public void mouseClicked(MouseEvent e) {
            boolean twice = e.getButton() == MouseEvent.BUTTON1 && e.getClickCount() == 2;
            if (twice && !doubleClicked(viewport.toMm(px(e)), reachMm())) {
                fit();
            }
        }

        @Override
        public void mouseMoved(MouseEvent e) {
            Point mm = viewport.toMm(px(e));
            hover(mm);
            boolean over = over(mm, reachMm());
            setCursor(Cursor.getPredefinedCursor(over ? Cursor.HAND_CURSOR : Cursor.DEFAULT_CURSOR));
        }

        @Override
        public void mouseWheelMoved(MouseWheelEvent e) {
            show(viewport.zoomed(Math.pow(ZOOM_STEP, -e.getPreciseWheelRotation()), px(e)));
        }

        private static Point px(MouseEvent e) {
            return new Point(e.getX(), e.getY());
        }
    }
}
