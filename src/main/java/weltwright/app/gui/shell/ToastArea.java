package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.HierarchyEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLayeredPane;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.message.Messages;

/**
 * Shows messages over the lower right corner of a component, the newest at the bottom, at most two at a time. They
 * never move anything. A message goes by itself after a time for reading it; one that tells of a failure or holds a
 * choice stays until it is closed.
 */
public final class ToastArea extends JPanel {
    private static final Messages MESSAGES = Messages.of(ToastArea.class);
    private static final int MOST = 2;
    private static final int WIDTH = 400;
    private static final int MARGIN = 16;

    /** For a short message; a long one gets the time that a slow reader takes for it. Chosen by eye. */
    private static final int SHOWN_MS = 6000;

    private static final int SHOWN_MS_PER_CHARACTER = 60;

    private final JComponent over;
    private final transient List<Toast> toasts = new ArrayList<>();
    private transient Consumer<Path> opener = path -> {};
    private transient Consumer<Path> folderOpener = path -> {};
    private boolean opensFiles;

    /** @param over the component over whose corner the messages are shown */
    ToastArea(JComponent over) {
        super(new WrappedTextLayout("insets 0, wrap 1, gapy 8", "[grow,fill]"));
        this.over = over;
        setName("notice");
        setOpaque(false);
        setVisible(false);
        over.addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                place();
            }

            @Override
            public void componentMoved(ComponentEvent e) {
                place();
            }
        });
        over.addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                place();
            }
        });
    }

    /** Puts the area into a window. */
    void install(JLayeredPane pane) {
        pane.add(this, JLayeredPane.PALETTE_LAYER);
    }

    /** Sets what the buttons of a saved file do; without it there are no such buttons. */
    void onOpen(Consumer<Path> newOpener, Consumer<Path> newFolderOpener) {
        opener = newOpener;
        folderOpener = newFolderOpener;
        opensFiles = true;
    }

    /** Shows a message that goes by itself; an empty one takes away all that hold no choice. */
    void showMessage(String message) {
        if (message.isEmpty()) {
            clear();
        } else {
            add(new Toast(message, List.of(), true));
        }
    }

    /** Shows a message that stays until it is closed. */
    void showError(String message) {
        add(new Toast(message, List.of(), false));
    }

    /** Shows a message about a saved file, with buttons that open it and its folder. */
    void showSaved(String message, Path saved) {
        if (!opensFiles) {
            showMessage(message);
            return;
        }
        RunnableAction open =
                new RunnableAction(MESSAGES.text("toast.open"), saved.toString(), () -> opener.accept(saved));
        RunnableAction folder =
                new RunnableAction(MESSAGES.text("toast.folder"), saved.toString(), () -> folderOpener.accept(saved));
        open.putValue(Action.ACTION_COMMAND_KEY, "open saved file");
        folder.putValue(Action.ACTION_COMMAND_KEY, "show in folder");
        add(new Toast(message, List.of(open, folder), false));
    }

    /** Asks the user; the message goes with the first answer. The names of the buttons are the actions' commands. */
    void ask(String question, List<RunnableAction> answers) {
        add(new Toast(question, answers, false).closedByAnswer());
    }

    /** Returns the text of the newest message; empty without one. */
    public String message() {
        return toasts.isEmpty() ? "" : toasts.get(toasts.size() - 1).text.getText();
    }

    private void add(Toast toast) {
        toasts.removeIf(shown -> shown.text.getText().equals(toast.text.getText()));
        toasts.add(toast);
        // What holds a choice waits for its turn; of the others the oldest goes.
        toasts.stream()
                .filter(shown -> toasts.size() > MOST && !shown.asks)
                .findFirst()
                .ifPresent(toasts::remove);
        update();
    }

    private void close(Toast toast) {
        toast.timer.stop();
        toasts.remove(toast);
        update();
    }

    private void clear() {
        toasts.removeIf(shown -> !shown.asks);
        update();
    }

    private void update() {
        removeAll();
        toasts.stream().skip(Math.max(0, toasts.size() - MOST)).forEach(toast -> add(toast, "wmin 0"));
        setVisible(!toasts.isEmpty());
        place();
        if (!toasts.isEmpty()) {
            getAccessibleContext().setAccessibleDescription(message());
        }
    }

    private void place() {
        if (getParent() == null || !over.isShowing()) {
            return;
        }
        int margin = UIScale.scale(MARGIN);
        int width = Math.min(UIScale.scale(WIDTH), over.getWidth() - 2 * margin);
        // The preferred height of wrapped text depends on its width, so the width is set first.
        setSize(width, Math.max(1, getHeight()));
        layOut();
        layOut();
        Dimension preferred = getPreferredSize();
        Point corner =
                SwingUtilities.convertPoint(over, over.getWidth() - margin, over.getHeight() - margin, getParent());
        setBounds(corner.x - width, corner.y - preferred.height, width, preferred.height);
        validate();
        getParent().repaint();
    }

    private void layOut() {
        invalidate();
        doLayout();
        for (Component child : getComponents()) {
            child.invalidate();
            child.doLayout();
        }
    }

    /** A message with its buttons. */
    private final class Toast extends JPanel {
        private final WrappedText text = new WrappedText(ThemeColors::text);
        private final transient Timer timer;
        private boolean asks;

        Toast(String message, List<RunnableAction> actions, boolean passing) {
            super(new WrappedTextLayout("insets 12 16 12 8, fillx, wrap 2", "[grow,fill][]"));
            setOpaque(false);
            text.showText(message);
            add(text, "wmin 0");
            JButton close = new JButton("\u00d7");
            close.setName("close notice");
            close.getAccessibleContext().setAccessibleName(MESSAGES.text("toast.close"));
            close.setToolTipText(MESSAGES.text("toast.close"));
            close.putClientProperty("JButton.buttonType", "toolBarButton");
            close.addActionListener(e -> close(this));
            add(close, "aligny top");
            if (!actions.isEmpty()) {
                JPanel row = new JPanel(new MigLayout("insets 4 0 0 0, gap 8"));
                row.setOpaque(false);
                for (RunnableAction action : actions) {
                    JButton button = new JButton(action);
                    button.setName((String) action.getValue(Action.ACTION_COMMAND_KEY));
                    button.addActionListener(e -> {
                        if (asks) {
                            close(this);
                        }
                    });
                    row.add(button);
                }
                add(row, "span, wmin 0");
            }
            timer = new Timer(SHOWN_MS + SHOWN_MS_PER_CHARACTER * message.length(), e -> close(this));
            timer.setRepeats(false);
            if (passing) {
                timer.start();
            }
        }

        Toast closedByAnswer() {
            asks = true;
            return this;
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            int arc = UIScale.scale(12);
            g.setColor(ThemeColors.notificationBackground());
            g.fillRoundRect(0, 0, getWidth() - 1, getHeight() - 1, arc, arc);
            g.setColor(ThemeColors.line());
            g.drawRoundRect(0, 0, getWidth() - 1, getHeight() - 1, arc, arc);
            g.dispose();
        }
    }
}
