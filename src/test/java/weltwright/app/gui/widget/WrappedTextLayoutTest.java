package weltwright.app.gui.widget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;
import static org.assertj.swing.timing.Pause.pause;
import static org.assertj.swing.timing.Timeout.timeout;

import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.JFrame;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.assertj.swing.timing.Condition;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.VirtualDisplay;
import weltwright.app.gui.theme.ThemeColors;

/** Checks that wrapped text has its final height at the first layout. */
class WrappedTextLayoutTest {
    private static final String LONG =
            "Draw along the knife's edge, from where the outline is right to where it is right"
                    + " again: it follows the edge that the photo shows nearest to your line.";

    @Test
    void placesComponentsBelowTextAtTheFirstLayout() {
        VirtualDisplay.assumeThere();
        execute(() -> {
            WrappedText text = new WrappedText(ThemeColors::text);
            text.showText("");
            JPanel below = new JPanel();
            JPanel pane = new JPanel(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
            pane.add(text, "wmin 0");
            pane.add(below, "push, grow, wmin 0, hmin 0");
            JFrame frame = new JFrame();
            frame.setContentPane(pane);
            frame.addNotify();
            frame.setSize(new Dimension(900, 600));
            settled(frame, below);
            text.showText(LONG);
            settled(frame, below);
            frame.setSize(new Dimension(300, 600));
            settled(frame, below);
            text.showText("Short.");
            settled(frame, below);
            frame.dispose();
        });
    }

    /** A bar above the rest, once laid out in a narrow window, has the height for the wide window soon after. */
    @Test
    void tellsItsParentOfTheHeightForItsNewWidth() {
        VirtualDisplay.assumeThere();
        JPanel bar = execute(() -> new JPanel(new WrappedTextLayout("insets 0, fillx", "[grow,fill]")));
        JFrame frame = execute(() -> {
            WrappedText text = new WrappedText(ThemeColors::text);
            text.showText(LONG);
            bar.add(text, "wmin 0");
            JFrame made = new JFrame();
            JPanel north = new JPanel(new MigLayout("insets 0, fillx, wrap 1, gapy 0", "[grow,fill]"));
            north.add(bar, "wmin 0");
            made.setContentPane(new JPanel(new MigLayout("insets 0, fill")));
            made.getContentPane().add(north, "dock north");
            made.getContentPane().add(new JPanel(), "push, grow, wmin 0, hmin 0");
            made.addNotify();
            made.setSize(new Dimension(120, 600));
            made.validate();
            return made;
        });
        int narrow = execute(bar::getHeight);
        execute(() -> {
            frame.setSize(new Dimension(1300, 600));
            frame.validate();
        });
        execute(() -> frame.setVisible(true));
        // What the layout has asked for is done with the events after it.
        pause(
                new Condition("the height for the new width") {
                    @Override
                    public boolean test() {
                        return execute(bar::getHeight) < narrow / 3;
                    }
                },
                timeout(10_000));
        execute(frame::dispose);
    }

    /** Laid out once it is where it stays when it is laid out again. */
    private static void settled(JFrame frame, JPanel below) {
        frame.getContentPane().invalidate();
        frame.validate();
        Rectangle first = below.getBounds();
        frame.getContentPane().invalidate();
        frame.validate();
        assertThat(first).isEqualTo(below.getBounds());
    }
}
