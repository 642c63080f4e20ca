package weltwright.app.gui.shell;

import java.awt.Graphics;
import javax.swing.JButton;
import javax.swing.JPanel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;

/** A message to the user that stays until it is read or overtaken. Takes no room where there is none. */
public final class NotificationBar extends JPanel {
    private final WrappedText text = new WrappedText(ThemeColors::text);

    NotificationBar() {
        super(new WrappedTextLayout("insets 8 12 8 8, fillx", "[grow,fill][]"));
        setName("notice");
        setOpaque(false);
        JButton close = new JButton("Close");
        close.setName("close notice");
        close.addActionListener(e -> say(""));
        add(text, "wmin 0");
        add(close, "aligny top");
        setVisible(false);
    }

    /** Shows it; an empty message takes away what is shown. */
    void say(String message) {
        text.say(message);
        setVisible(!message.isEmpty());
        if (getParent() != null) {
            // Text tells its height for the width that it has: it gets its width before it is asked.
            setSize(getParent().getWidth(), getHeight());
            doLayout();
        }
        revalidate();
        repaint();
    }

    public String said() {
        return text.getText();
    }

    @Override
    protected void paintComponent(Graphics g) {
        g.setColor(ThemeColors.notificationBackground());
        g.fillRect(0, 0, getWidth(), getHeight());
    }
}
