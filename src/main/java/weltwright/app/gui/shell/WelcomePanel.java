package weltwright.app.gui.shell;

import java.awt.BasicStroke;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.KeyEvent;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.message.Messages;

/** Shown in place of a drawing while the job is empty: the first three steps, with buttons. */
final class WelcomePanel extends JPanel {
    private static final Messages TEXTS = Messages.of(WelcomePanel.class);

    private static final float[] DASHES = {8, 6};

    WelcomePanel(Action saveSheet, Action printSheet, Action openPhoto, Action openJob) {
        super(new MigLayout(
                "insets 36 44 36 44, wrap 2, hidemode 3",
                "[40!][180:480:560,grow,fill]",
                "push[]18[top]18[top]18[top]push"));
        setName("start page");
        JLabel title = new JLabel(TEXTS.text("welcome-panel.from-a-photo-of-the"));
        title.putClientProperty("FlatLaf.styleClass", "h2");
        add(title, "span, wmin 0, gapbottom 10");
        addStep(
                "1",
                TEXTS.text("welcome-panel.print-the-reference-sheet-at"),
                TEXTS.text("welcome-panel.measure-its-two-bars-with"),
                new JButton(saveSheet),
                new JButton(printSheet));
        addStep(
                "2",
                TEXTS.text("welcome-panel.lay-the-knife-on-it"),
                TEXTS.text("welcome-panel.from-straight-above-from-as"));
        addStep(
                "3",
                TEXTS.text("welcome-panel.drop-the-photo-here"),
                TEXTS.text("welcome-panel.as-the-camera-took-it"),
                new JButton(openPhoto),
                new JButton(openJob));
    }

    private void addStep(String number, String what, String how, JButton... buttons) {
        JLabel figure = new JLabel(number);
        figure.putClientProperty("FlatLaf.styleClass", "h0");
        JPanel words = new JPanel(new MigLayout("insets 0, fillx, wrap 1, gapy 4", "[grow,fill]"));
        words.setOpaque(false);
        JLabel heading = new JLabel(what);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        words.add(heading, "wmin 0");
        WrappedText more = new WrappedText(ThemeColors::text);
        more.showText(how);
        words.add(more, "wmin 0");
        if (buttons.length > 0) {
            JPanel row = new JPanel(new MigLayout("insets 4 0 0 0"));
            row.setOpaque(false);
            for (JButton button : buttons) {
                button.setMnemonic(KeyEvent.VK_UNDEFINED); // the form beside has the letters
                row.add(button);
            }
            words.add(row);
        }
        add(figure);
        add(words, "wmin 0");
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(ThemeColors.canvas());
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(ThemeColors.markLine());
        g.setStroke(new BasicStroke(2, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, DASHES, 0));
        g.drawRoundRect(14, 14, getWidth() - 29, getHeight() - 29, 18, 18);
        g.dispose();
    }
}
