package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.swing.JEditorPane;
import javax.swing.JMenuItem;
import javax.swing.KeyStroke;
import javax.swing.MenuElement;
import javax.swing.text.BadLocationException;
import org.assertj.swing.fixture.DialogFixture;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.guide.GuidePage;

/** F1 opens the guide at the page about the place, and what the guide says of keys. */
class HelpTest extends MainWindowTestBase {
    private static final Map<Integer, String> KEY_NAMES =
            Map.of(KeyEvent.VK_COMMA, "comma", KeyEvent.VK_PLUS, "+", KeyEvent.VK_MINUS, "−");

    @Test
    void opensThePageOfEachPlace() {
        press(KeyEvent.VK_F1);
        DialogFixture help = dialog("help");
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

    /** The keys of the menus are all on the page of keys, and each key of its first table that is a menu's is one. */
    @Test
    void thePageOfKeysHasThoseOfTheMenus() {
        Set<String> ofMenus = execute(() -> {
            Set<String> keys = new TreeSet<>();
            addKeys(window.frame().getJMenuBar(), keys);
            return keys;
        });
        String page = GuidePage.KEYS.text(200);
        Set<String> told = Pattern.compile("Ctrl (Shift )?([A-Z]\\b|comma|\\+|−|0)")
                .matcher(page)
                .results()
                .map(MatchResult::group)
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(page).contains("F1");
        assertThat(told).isEqualTo(ofMenus);
    }

    private static void addKeys(MenuElement menu, Set<String> keys) {
        if (menu instanceof JMenuItem item && item.getAccelerator() != null) {
            KeyStroke key = item.getAccelerator();
            String name = KEY_NAMES.getOrDefault(key.getKeyCode(), String.valueOf((char) key.getKeyCode()));
            boolean control = (key.getModifiers() & InputEvent.CTRL_DOWN_MASK) != 0;
            boolean shift = (key.getModifiers() & InputEvent.SHIFT_DOWN_MASK) != 0;
            if (control) {
                keys.add("Ctrl " + (shift ? "Shift " : "") + name);
            }
        }
        for (MenuElement element : menu.getSubElements()) {
            addKeys(element, keys);
        }
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
