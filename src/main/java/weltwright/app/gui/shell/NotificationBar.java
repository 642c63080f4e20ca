package weltwright.app.gui.shell;

import java.awt.Graphics;
import javax.swing.JButton;
import javax.swing.JPanel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;

/** Shows a message until the user closes it or another one replaces it. Hidden without a message. */
public final class NotificationBar extends JPanel {
    private final WrappedText text = new WrappedText(ThemeColors::text);

    NotificationBar() {
        super(new WrappedTextLayout("insets 8 12 8 8, fillx", "[grow,fill][]"));
        setName("notice");
        setOpaque(false);
        JButton close = new JButton("Close");
        close.setName("close notice");
        close.addActionListener(e -> showMessage(""));
        add(text, "wmin 0");
        add(close, "aligny top");
        setVisible(false);
    }

    /** Shows a message; an empty one hides the bar. */
    void showMessage(String message) {
        text.showText(message);
        setVisible(!message.isEmpty());
        if (getParent() != null) {
            // The preferred height of the text depends on its width, so the width is set first.
            setSize(getParent().getWidth(), getHeight());
            doLayout();
        }
        revalidate();
        repaint();
    }

    public String message() {
        return text.getText();
    }

    @Override
    protected void paintComponent(Graphics g) {
        g.setColor(ThemeColors.notificationBackground());
        g.fillRect(0, 0, getWidth(), getHeight());
    }
}
