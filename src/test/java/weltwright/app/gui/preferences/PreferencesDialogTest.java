package weltwright.app.gui.preferences;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.InstanceOfAssertFactories.DOUBLE;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JMenuItem;
import javax.swing.JPopupMenu;
import javax.swing.text.JTextComponent;
import org.assertj.swing.core.matcher.JButtonMatcher;
import org.assertj.swing.fixture.DialogFixture;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.shell.MainWindow;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.HardwareFile;
import weltwright.job.Job;
import weltwright.job.MakerDefaults;
import weltwright.job.MakerDefaultsFile;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.spec.SheathSpec;

/** The preferences change what new jobs begin with, and no job that is begun. */
class PreferencesDialogTest extends MainWindowTestBase {

    /** Leather of 8 oz is 8/64 in thick, by the trade's convention. */
    private static final double EIGHT_OUNCES_MM = 8 * 25.4 / 64;

    @Test
    void aNewJobBeginsWithTheMakersLeatherAndIronAndABegunOneStays() {
        open(OutlinedJobs.outlined());
        SheathSpec before = job().spec();
        DialogFixture dialog = openPreferences();
        put(dialog, "preferred leather thickness", "8 oz");
        put(dialog, "preferred stitch pitch", "3 mm");
        close(dialog);
        assertThat(job().spec()).isEqualTo(before);

        JMenuItem newJob = frame.menuItemWithPath("File", "New job").target();
        execute(() -> newJob.doClick());
        await("another window", () -> application.windows().size() == 2);
        MainWindow other = application.windows().get(1);
        Job begun = execute(() -> other.model().job());
        assertThat(begun.spec().leather().thicknessMm()).isCloseTo(EIGHT_OUNCES_MM, within(1e-9));
        assertThat(begun.spec().stitching().pitchMm()).isEqualTo(3);
        assertThat(begun.spec().stitching().marginMm())
                .isEqualTo(before.stitching().marginMm());
        assertThat(begun.typedText("leather thickness")).contains("8 oz");
        assertThat(execute(() -> other.model().hasUnsavedChanges())).isFalse();
        assertThat(job().spec()).isEqualTo(before);
    }

    @Test
    void theEmptyJobBehindTheStartPageBeginsWithThemToo() {
        DialogFixture dialog = openPreferences();
        put(dialog, "preferred leather thickness", "8 oz");
        put(dialog, "preferred belt width", "50");
        close(dialog);
        assertThat(job().spec().leather().thicknessMm()).isCloseTo(EIGHT_OUNCES_MM, within(1e-9));
        assertThat(job().spec().belt().beltWidthMm()).isEqualTo(50);
        assertThat(application.windows()).hasSize(1);
        frame.button(JButtonMatcher.withText("Preferences…").andShowing()).click(); // on the start page
        DialogFixture again = dialog("preferences");
        again.textBox("preferred leather thickness").requireText("8 oz");
        close(again);
    }

    @Test
    void aWrongEntryIsRefusedInItsFieldAndKeepsTheDialogOpen() {
        DialogFixture dialog = openPreferences();
        dialog.textBox("preferred stitch pitch").deleteText().enterText("abc");
        pressButton(dialog, "close preferences");
        robot.waitForIdle();
        assertThat(execute(() -> dialog.target().isVisible())).isTrue();
        assertThat(new MakerDefaultsFile(state.resolve("defaults.json")).read()).isEqualTo(MakerDefaults.USUAL);
        put(dialog, "preferred stitch pitch", "6 spi");
        close(dialog);
        assertThat(new MakerDefaultsFile(state.resolve("defaults.json")).read().pitchesMm())
                .singleElement(DOUBLE)
                .isCloseTo(25.4 / 6, within(1e-9));
    }

    @Test
    void theFormOfTheSheathOffersTheMakersLeathers() {
        open(OutlinedJobs.outlined());
        DialogFixture dialog = openPreferences();
        put(dialog, "preferred leather thickness", "3 mm, 8 oz");
        close(dialog);
        frame.toggleButton("stage Sheath").click();
        execute(() -> frame.textBox("leather thickness").target().requestFocusInWindow());
        awaitFocus("leather thickness");
        press(KeyEvent.VK_ALT, KeyEvent.VK_DOWN);
        JPopupMenu offered = robot.findActivePopupMenu();
        assertThat(execute(() -> offered.getSubElements())).hasSize(2);
        execute(() -> ((JMenuItem) offered.getSubElements()[1]).doClick());
        await("8 oz", () -> Math.abs(job().spec().leather().thicknessMm() - EIGHT_OUNCES_MM) < 1e-9);
        frame.textBox("leather thickness").requireText("8 oz");
    }

    @Test
    void unitAndPaperHoldAtOnceInTheWindow() {
        open(OutlinedJobs.outlined());
        DialogFixture dialog = openPreferences();
        dialog.comboBox("preferred unit").selectItem("Inches");
        dialog.textBox("preferred stitch margin").requireText("1/8 in");
        String letter = dialog.comboBox("preferred paper").contents()[1];
        dialog.comboBox("preferred paper").selectItem(letter);
        close(dialog);
        frame.textBox("handle thickness").requireText("0.748 in"); // 19 mm
        frame.toggleButton("stage Paper").click();
        frame.comboBox("paper size").requireSelection(letter);
    }

    @Test
    void takesTheMakersHardwareFromAFile() {
        Path file = state.resolve("hardware.json");
        HardwareList few = new HardwareList(
                HardwareList.USUAL.fasteners().subList(0, 9),
                HardwareList.USUAL.rings().subList(0, 1));
        HardwareFile.write(few, file);
        DialogFixture dialog = openPreferences();
        pressButton(dialog, "open preferred hardware");
        choose(file);
        dialog.textBox("preferred hardware").requireText("9 fasteners, 1 ring");
        close(dialog);
        assertThat(job().spec().hardware()).isEqualTo(few);
    }

    @Test
    void aFileThatHoldsNoHardwareIsRefusedWithAMessage() throws IOException {
        Path file = Files.writeString(state.resolve("other.json"), "{}");
        DialogFixture dialog = openPreferences();
        pressButton(dialog, "open preferred hardware");
        choose(file);
        WrappedText error = robot.finder().findByName(dialog.target(), "defaults wrong", WrappedText.class, false);
        await(
                "the refusal",
                () -> execute(() -> error.isShowing() && error.getText().contains("is no list of hardware")));
        dialog.textBox("preferred hardware").requireText("As in the job before");
        close(dialog);
    }

    @Test
    void aDamagedFileIsToldAndLeftAlone() throws IOException {
        Path file = state.resolve("defaults.json");
        Files.writeString(file, "{\"format\": \"weltwright defaults\", \"leather\": ");
        DialogFixture dialog = openPreferences();
        dialog.textBox("preferred leather thickness").requireDisabled();
        close(dialog);
        assertThat(Files.readString(file)).endsWith("\"leather\": ");
        assertThat(job().spec().leather().thicknessMm())
                .isEqualTo(MakerDefaults.USUAL.leathersMm().get(0));
    }

    @Test
    void everythingHasANameAndItsOwnKey() {
        DialogFixture dialog = openPreferences();
        execute(() -> {
            List<Integer> keys = new ArrayList<>();
            for (Component each : all(dialog.target())) {
                if (each instanceof JLabel label && label.getDisplayedMnemonic() != 0) {
                    keys.add(label.getDisplayedMnemonic());
                } else if (each instanceof AbstractButton button && button.getMnemonic() != 0) {
                    keys.add(button.getMnemonic());
                }
                if (each instanceof JComboBox<?> || each instanceof JTextComponent) {
                    boolean shown = each.isShowing() && each.isFocusable();
                    assertThat(!shown || each.getAccessibleContext().getAccessibleName() != null)
                            .as(each.getName())
                            .isTrue();
                }
            }
            assertThat(keys).hasSizeGreaterThan(9).doesNotHaveDuplicates();
        });
        press(KeyEvent.VK_ESCAPE);
        await("the dialog to close", () -> execute(() -> !dialog.target().isShowing()));
    }

    private DialogFixture openPreferences() {
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_COMMA);
        return dialog("preferences");
    }

    private void put(DialogFixture dialog, String field, String text) {
        dialog.textBox(field).deleteText().enterText(text + "\n");
        robot.waitForIdle();
    }

    private void close(DialogFixture dialog) {
        pressButton(dialog, "close preferences");
        await("the dialog to close", () -> execute(() -> !dialog.target().isShowing()));
        robot.waitForIdle();
    }

    private static List<Component> all(Container container) {
        List<Component> found = new ArrayList<>();
        for (Component each : container.getComponents()) {
            found.add(each);
            if (each instanceof Container inner) {
                found.addAll(all(inner));
            }
        }
        return found;
    }
}
