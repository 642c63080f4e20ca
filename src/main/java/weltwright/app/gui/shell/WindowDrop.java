package weltwright.app.gui.shell;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.datatransfer.DataFlavor;
import java.awt.dnd.DropTargetAdapter;
import java.awt.dnd.DropTargetDragEvent;
import java.awt.dnd.DropTargetDropEvent;
import java.awt.dnd.DropTargetEvent;
import java.util.TooManyListenersException;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JTable;
import javax.swing.UIManager;
import javax.swing.text.JTextComponent;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.FileDropHandler;
import weltwright.message.Messages;

/**
 * Makes the whole window take dropped files, and shows it while one is dragged over it. Texts and tables, which would
 * take drops themselves and refuse files, leave them to the window; they take none of text in exchange.
 */
final class WindowDrop {
    private static final Messages TEXTS = Messages.of(WindowDrop.class);

    private static final String TEXT = TEXTS.text("window-drop.drop-the-photo-or-a");
    private static final float[] DASHES = {10, 8};

    private WindowDrop() {}

    static void install(JFrame frame, FileDropHandler handler) {
        JComponent root = frame.getRootPane();
        JPanel overlay = new Overlay();
        frame.setGlassPane(overlay);
        root.setTransferHandler(handler);
        try {
            root.getDropTarget().addDropTargetListener(new DropTargetAdapter() {
                @Override
                public void dragEnter(DropTargetDragEvent e) {
                    overlay.setVisible(e.isDataFlavorSupported(DataFlavor.javaFileListFlavor));
                }

                @Override
                public void dragExit(DropTargetEvent e) {
                    overlay.setVisible(false);
                }

                @Override
                public void drop(DropTargetDropEvent e) {
                    overlay.setVisible(false);
                }
            });
        } catch (TooManyListenersException e) {
            throw new IllegalStateException(e); // a component with a transfer handler takes any number of listeners
        }
        leaveDropsToWindow(frame.getContentPane());
    }

    /** Has the texts and tables in a container, which was made after the window was, leave drops to the window. */
    static void leaveDropsToWindow(Container container) {
        for (Component child : container.getComponents()) {
            if (child instanceof JTextComponent || child instanceof JTable) {
                child.setDropTarget(null);
                // Another theme brings the drop target back.
                child.addPropertyChangeListener("UI", e -> child.setDropTarget(null));
            }
            if (child instanceof Container inner) {
                leaveDropsToWindow(inner);
            }
        }
    }

    /** Covers the window while a file is dragged over it. */
    private static final class Overlay extends JPanel {
        Overlay() {
            setOpaque(false);
            setName("drop here");
            getAccessibleContext().setAccessibleName(TEXT);
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            Color canvas = ThemeColors.canvas();
            g.setColor(new Color(canvas.getRed(), canvas.getGreen(), canvas.getBlue(), 225));
            g.fillRect(0, 0, getWidth(), getHeight());
            g.setColor(ThemeColors.markLine());
            g.setStroke(new BasicStroke(3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
            g.drawRoundRect(20, 20, getWidth() - 41, getHeight() - 41, 20, 20);
            g.setFont(UIManager.getFont("h2.font"));
            g.setColor(ThemeColors.text());
            FontMetrics metrics = g.getFontMetrics();
            g.drawString(TEXT, (getWidth() - metrics.stringWidth(TEXT)) / 2, getHeight() / 2);
            g.dispose();
        }
    }
}
