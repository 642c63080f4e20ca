package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import javax.accessibility.AccessibleContext;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JProgressBar;
import javax.swing.JScrollBar;
import javax.swing.JSlider;
import javax.swing.JTable;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;

/** What can be used or read has a name for a screen reader. */
class AccessibleNamesTest extends MainWindowTestBase {

    @Test
    void everyControlHasANameAtEachStage() {
        assertThat(nameless()).isEmpty();
        open(OutlinedJobs.traced(0.7));
        for (WorkflowStage stage : WorkflowStage.values()) {
            frame.toggleButton("stage " + stage.label()).click();
            robot.waitForIdle();
            assertThat(nameless()).as(stage.label()).isEmpty();
        }
    }

    private List<String> nameless() {
        return execute(() -> {
            List<String> found = new ArrayList<>();
            collect(window.frame(), "", found);
            return found;
        });
    }

    /** Parts that another component brings along, such as the arrow of a combo box, are named by it. */
    private static void collect(Component component, String path, List<String> found) {
        String here = path + "/" + component.getClass().getSimpleName()
                + (component.getName() == null ? "" : "[" + component.getName() + "]");
        boolean control = component instanceof AbstractButton
                || component instanceof JTextComponent
                || component instanceof JComboBox
                || component instanceof JTable
                || component instanceof JSlider
                || component instanceof JProgressBar
                || component instanceof DrawingCanvas;
        if (control) {
            AccessibleContext context = component.getAccessibleContext();
            String name = context == null ? null : context.getAccessibleName();
            boolean emptyText = component instanceof JTextComponent text
                    && !text.isFocusable()
                    && text.getText().isEmpty();
            boolean invisibleButton = component instanceof AbstractButton button && !button.isVisible();
            if ((name == null || name.isBlank()) && !emptyText && !invisibleButton) {
                found.add(here);
            }
        }
        boolean ownParts = component instanceof JComboBox
                || component instanceof JScrollBar
                || component instanceof JTextComponent
                || component instanceof JTable;
        if (component instanceof Container container && !ownParts) {
            for (Component child : container.getComponents()) {
                collect(child, here, found);
            }
        }
    }
}
