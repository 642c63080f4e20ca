package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.junit.jupiter.api.Test;

class NotificationBarTest {
    /** The height is that of one line of text, not of one word per line. */
    @Test
    void showsAShortMessageAtTheHeightOfItsButton() {
        int[] heights = execute(() -> {
            NotificationBar notificationBar = new NotificationBar();
            JPanel top = new JPanel(new MigLayout("insets 0, fillx, wrap 1, hidemode 3, gapy 0", "[grow,fill]"));
            top.add(notificationBar, "wmin 0");
            top.setSize(1024, 300);
            top.doLayout();
            int button = notificationBar.getComponent(1).getPreferredSize().height;
            notificationBar.showMessage("Saved. The pattern is as it was, and can be printed.");
            return new int[] {button, notificationBar.getPreferredSize().height};
        });

        assertThat(heights[1]).isBetween(heights[0], 2 * heights[0]);
    }
}
