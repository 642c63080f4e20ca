package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import javax.swing.JEditorPane;
import javax.swing.text.BadLocationException;
import org.assertj.swing.finder.WindowFinder;
import org.assertj.swing.fixture.DialogFixture;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.guide.GuidePage;

/** F1 opens the guide at the page about the place. */
class HelpTest extends MainWindowTestBase {

    @Test
    void opensThePageOfEachPlace() {
        press(KeyEvent.VK_F1);
        DialogFixture help = WindowFinder.findDialog("help").withTimeout(60_000).using(robot);
        JEditorPane text = (JEditorPane) robot.finder().findByName(help.target(), "help text");
        assertThat(shown(text)).contains(GuidePage.WAY.title());
        open(OutlinedJobs.outlined());
        assertThat(page(WorkflowStage.KNIFE, text)).contains(GuidePage.OUTLINE.title(), "caliper");
        assertThat(page(WorkflowStage.SHEATH, text)).contains(GuidePage.SHEATH.title());
        assertThat(page(WorkflowStage.LEATHER, text)).contains(GuidePage.LEATHER.title(), "The shelf");
        assertThat(page(WorkflowStage.PAPER, text)).contains(GuidePage.PRINTING.title(), "50 mm square");
        assertThat(page(WorkflowStage.BENCH, text)).contains(GuidePage.BENCH.title(), "Space bar");
        robot.focus(text);
        press(KeyEvent.VK_ESCAPE);
        await("the help to close", () -> execute(() -> !help.target().isShowing()));
    }

    private String page(WorkflowStage stage, JEditorPane text) {
        execute(() -> {
            window.page().goTo(stage);
            window.showHelp();
        });
        return shown(text);
    }

    private static String shown(JEditorPane text) {
        return execute(() -> {
            try {
                return text.getDocument().getText(0, text.getDocument().getLength());
            } catch (BadLocationException e) {
                throw new IllegalStateException(e);
            }
        });
    }
}
