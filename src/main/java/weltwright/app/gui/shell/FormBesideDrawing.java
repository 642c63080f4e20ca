package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JSplitPane;
import javax.swing.JToggleButton;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.message.Messages;

/**
 * The form with the next step at its foot, beside the drawing that it changes. In a narrow window the form is a drawer:
 * a button at the left puts it away, so that the drawing has all of the width, and the next step then stands in a row
 * below. The open drawer covers nothing of the drawing, for what is typed in it is seen there at once.
 */
final class FormBesideDrawing extends JPanel {
    /** Below this width of the window, in px, the form is a drawer. */
    private static final int NARROW_PX = 1100;

    private static final int FORM_PX = 356;
    private static final int LEAST_FORM_PX = 280;

    private final JSplitPane split;
    private final JPanel left = new JPanel(new BorderLayout());
    private final NextStepBar nextStep;
    private final JToggleButton toggle;
    private int formWidth = UIScale.scale(FORM_PX);

    FormBesideDrawing(JComponent form, NextStepBar nextStep, JComponent drawing) {
        super(new BorderLayout());
        this.nextStep = nextStep;
        left.add(form, BorderLayout.CENTER);
        left.add(nextStep, BorderLayout.SOUTH);
        left.setMinimumSize(UIScale.scale(new Dimension(LEAST_FORM_PX, 100)));
        split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, left, drawing);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setDividerLocation(formWidth);
        Messages messages = Messages.of(FormBesideDrawing.class);
        toggle = new JToggleButton(messages.text("form"), null, true);
        toggle.setName("show form");
        toggle.setToolTipText(messages.text("form.tip"));
        toggle.putClientProperty("JButton.buttonType", "toolBarButton");
        ToolIcons.replaceText(toggle, "form");
        toggle.addActionListener(e -> setFormOpen(toggle.isSelected()));
        JPanel rail = new JPanel();
        rail.add(toggle);
        add(rail, BorderLayout.WEST);
        add(split, BorderLayout.CENTER);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                boolean narrow = getWidth() < UIScale.scale(NARROW_PX);
                rail.setVisible(narrow);
                if (!narrow) {
                    setFormOpen(true);
                }
            }
        });
    }

    /** Shows the form or puts it away. */
    void setFormOpen(boolean open) {
        toggle.setSelected(open);
        if (open == (left.getParent() != null)) {
            return;
        }
        if (open) {
            nextStep.setInRow(false);
            left.add(nextStep, BorderLayout.SOUTH);
            split.setLeftComponent(left);
            split.setDividerLocation(formWidth);
        } else {
            formWidth = split.getDividerLocation();
            split.setLeftComponent(null);
            nextStep.setInRow(true);
            add(nextStep, BorderLayout.SOUTH);
        }
        if (getRootPane() != null) { // a button that moves is no longer the default button
            getRootPane().setDefaultButton(nextStep.proposedButton());
        }
        revalidate();
        repaint();
    }
}
