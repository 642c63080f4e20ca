package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.RenderingHints;
import java.awt.event.KeyEvent;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLayeredPane;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.message.Messages;

/** Customer, knife, dates and notes of the job, in a panel that opens below the window's title and covers the form. */
final class OrderPopup extends JPanel {
    private static final Messages MESSAGES = Messages.of(OrderPopup.class);
    private static final int WIDTH = 420;

    private final JFrame frame;
    private final FormPanel form;

    OrderPopup(JFrame frame, JobModel model, FormPanel form) {
        super(new MigLayout("insets 4 4 12 4, fill, wrap 1", "[grow]", "[grow,fill][]"));
        this.frame = frame;
        this.form = form;
        setName("order");
        setVisible(false);
        JScrollPane scroll = new JScrollPane(form);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        add(scroll, "grow, wmin 0, hmin 0");
        JCheckBox finished = new JCheckBox(MESSAGES.text("order.finished"));
        finished.setName("finished");
        finished.addActionListener(e -> model.change(job -> job.withFinished(
                finished.isSelected() ? Optional.of(LocalDate.now(ZoneId.systemDefault())) : Optional.empty())));
        model.subscribe(() -> finished.setSelected(model.job().finished().isPresent()));
        add(finished, "split 2, gapleft 12, pushx");
        JButton done = new JButton(new RunnableAction(MESSAGES.text("order.done"), "", this::close));
        done.setName("close order");
        add(done, "gapright 12");
        getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "close");
        getActionMap().put("close", new RunnableAction("", "", this::close));
        frame.getLayeredPane().add(this, JLayeredPane.PALETTE_LAYER);
    }

    /** Opens the panel below a component, or closes it where it is open. */
    void toggle(JComponent below) {
        if (isVisible()) {
            close();
            return;
        }
        Point corner = SwingUtilities.convertPoint(below, 0, below.getHeight(), frame.getLayeredPane());
        int room = frame.getLayeredPane().getHeight() - corner.y - UIScale.scale(8);
        Dimension preferred = getPreferredSize();
        setBounds(corner.x, corner.y, UIScale.scale(WIDTH), Math.min(room, preferred.height + UIScale.scale(24)));
        setVisible(true);
        validate();
        form.transferFocus();
    }

    /** Opens the panel and moves the focus to its refused entry. */
    void showRefusedEntry(JComponent below) {
        if (!isVisible()) {
            toggle(below);
        }
        form.showRefusedField();
    }

    void close() {
        if (isVisible()) {
            if (SwingUtilities.isDescendingFrom(frame.getFocusOwner(), this)) {
                frame.getContentPane().transferFocus();
            }
            setVisible(false);
        }
    }

    FormPanel form() {
        return form;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(getBackground());
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(ThemeColors.line());
        g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
        g.dispose();
    }
}
