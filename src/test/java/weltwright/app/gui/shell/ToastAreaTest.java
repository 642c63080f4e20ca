package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.widget.RunnableAction;

class ToastAreaTest extends MainWindowTestBase {
    private ToastArea toasts() {
        return (ToastArea) robot.finder().findByName("notice", false);
    }

    @Test
    void aMessageMovesNothing() {
        open(OutlinedJobs.outlined());
        List<Rectangle> before = places();
        execute(() -> toasts().showError("The file could not be written. Choose another folder, or make room."));
        robot.waitForIdle();
        assertThat(toasts().isShowing()).isTrue();
        assertThat(places()).isEqualTo(before);
    }

    private List<Rectangle> places() {
        return execute(() -> {
            List<Rectangle> found = new ArrayList<>();
            for (Component each : SwingUtilities.getWindowAncestor(toasts()).getComponents()) {
                found.add(each.getBounds());
            }
            collect((JPanel) window.frame().getContentPane(), found);
            return found;
        });
    }

    private static void collect(JPanel panel, List<Rectangle> found) {
        for (Component child : panel.getComponents()) {
            found.add(child.getBounds());
            if (child instanceof JPanel inner) {
                collect(inner, found);
            }
        }
    }

    @Test
    void showsAtMostTwoMessagesAndKeepsAQuestionUntilItIsAnswered() {
        List<String> answers = new ArrayList<>();
        execute(() -> {
            ToastArea toasts = toasts();
            toasts.ask("Restore it?", List.of(new RunnableAction("Yes", "", () -> answers.add("yes"))));
            toasts.showMessage("One.");
            toasts.showMessage("Two.");
            toasts.showMessage("Three.");
            toasts.showMessage("");
        });
        robot.waitForIdle();
        assertThat(execute(() -> toasts().message())).isEqualTo("Restore it?");
        assertThat(execute(() -> toasts().getComponentCount())).isEqualTo(1);
        frame.button(org.assertj.swing.core.matcher.JButtonMatcher.withText("Yes"))
                .click();
        assertThat(answers).containsExactly("yes");
        assertThat(execute(() -> toasts().isVisible())).isFalse();
    }

    /** A defect in painting happens again with each repaint that the message about it brings. */
    @Test
    void tellsOfADefectOnce() {
        IllegalStateException defect = new IllegalStateException("thrown by a test");
        SwingUtilities.invokeLater(() -> {
            throw defect;
        });
        await("the message", () -> execute(toasts()::message).startsWith("Something inside the program failed"));
        execute(() -> toasts().showMessage(""));
        SwingUtilities.invokeLater(() -> {
            throw defect;
        });
        robot.waitForIdle();
        robot.waitForIdle();
        assertThat(execute(toasts()::message)).isEmpty();
    }
}
