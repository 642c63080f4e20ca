package weltwright.app.gui.shell;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BorderLayout;
import java.awt.Dimension;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JSeparator;
import javax.swing.JSplitPane;
import net.miginfocom.swing.MigLayout;

/** Where the parts of a window lie: title and stages, the form with the next step, the drawing, the running task. */
final class WindowContent {
    private WindowContent() {}

    /** @param body empty; gets form and drawing, over whose corner messages are shown */
    static JPanel of(
            JComponent header,
            JComponent stageBar,
            JComponent forms,
            JComponent nextStep,
            JComponent drawings,
            JPanel body,
            JComponent tasks) {
        JPanel content = new JPanel(new MigLayout("insets 0, fill, gap 0"));
        JPanel top = new JPanel(new MigLayout("insets 0, fillx, wrap 1, gap 0", "[grow,fill]"));
        top.add(header, "wmin 0");
        top.add(stageBar, "wmin 0");
        top.add(new JSeparator(), "h 1!");
        content.add(top, "dock north");
        JPanel left = new JPanel(new BorderLayout());
        left.add(forms, BorderLayout.CENTER);
        left.add(nextStep, BorderLayout.SOUTH);
        left.setMinimumSize(UIScale.scale(new Dimension(280, 100)));
        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, left, drawings);
        split.setBorder(BorderFactory.createEmptyBorder());
        split.setDividerLocation(UIScale.scale(356));
        JPanel statusBar = new JPanel(new MigLayout("insets 0 12 0 12", "[grow,fill]", "[28!]"));
        statusBar.add(tasks, "hmax 26, wmin 0");
        content.add(statusBar, "dock south");
        body.add(split, "wmin 0, hmin 0");
        content.add(body, "push, grow, wmin 0, hmin 0");
        return content;
    }
}
