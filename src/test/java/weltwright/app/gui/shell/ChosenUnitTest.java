package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.OptionalDouble;
import javax.swing.JTable;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.assertj.swing.data.TableCell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.widget.WrappedText;
import weltwright.job.Job;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.StrapLeather;

/** One choice of unit holds everywhere. 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
class ChosenUnitTest extends MainWindowTestBase {
    @TempDir
    private Path folder;

    @Test
    void readsABareNumberInTheChosenUnitAndChangesNoValueByShowingIt() {
        open(OutlinedJobs.outlined());
        Job before = job();
        chooseInches();
        frame.textBox("handle thickness").requireText("0.748 in"); // 19 mm
        frame.textBox("spine thickness").focus();
        frame.textBox("handle thickness").focus();
        frame.toggleButton("stage Sheath").click();
        assertThat(job()).isEqualTo(before);

        frame.toggleButton("stage Knife").click();
        type("spine thickness", "3/16");
        assertThat(job().settings().measuredSpineMm()).isCloseTo(25.4 * 3 / 16, within(1e-12));
        frame.textBox("spine thickness").requireText("3/16");
        frame.menuItemWithPath("View", "Sizes in mm").click();
        frame.textBox("spine thickness").requireText("4.76 mm");
        frame.textBox("handle thickness").requireText("19 mm");
    }

    @Test
    void showsWhatWasTypedAsItWasTypedAlsoAfterUndoAndFromTheFile() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        type("leather thickness", "8 oz");
        frame.comboBox("drawn with").selectItem("Left hand");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        frame.textBox("leather thickness").requireText("3 mm");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        frame.textBox("leather thickness").requireText("8 oz");

        press(KeyEvent.VK_CONTROL, KeyEvent.VK_S);
        Path file = folder.resolve("typed.wwj");
        choose(file);
        await(
                "the file",
                () -> Files.exists(file) && !execute(() -> window.model().hasUnsavedChanges()));
        open(Job.begin(LocalDate.of(2026, 5, 6)));
        frame.menuItemWithPath("File", "Open job…").click();
        choose(file);
        await("the job", () -> job().spec().leather().thicknessMm() == 25.4 / 8);
        frame.textBox("leather thickness").requireText("8 oz");
    }

    /** The pages and the sheet name the lengths to be measured on them in mm. */
    @Test
    void leavesWhatIsMeasuredOnAPrintInMillimetres() {
        open(OutlinedJobs.outlined());
        chooseInches();
        frame.toggleButton("fold Print, lens and tip").click();
        frame.textBox("bar across the sheet").requireText("100 mm");
        frame.toggleButton("stage Paper").click();
        frame.textBox("width of the printed square").requireText("50 mm");
        type("width of the printed square", "49.5");
        frame.textBox("width of the printed square").requireText("49.5");
        frame.textBox("height of the printed square").requireText("50 mm");
    }

    @Test
    void holdsForAdviceHardwareWorkAndPaper() throws IOException {
        Job job = OutlinedJobs.outlined();
        open(job.withSpec(job.spec().withLeather(job.spec().leather().withThicknessMm(25.4 / 8))));
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        chooseInches();
        frame.toggleButton("open findings").click();
        assertThat(execute(this::findings)).contains(" in").doesNotContain(" mm");
        frame.toggleButton("tab Hardware").click();
        robot.waitForIdle();
        JTable stock = frame.table("hardware at hand").target();
        assertThat(execute(() -> (String) stock.getValueAt(0, 2))).endsWith(" in");
        frame.toggleButton("stage Bench").click();
        JTable steps = frame.table("work steps").target();
        await("the work in inches", () -> execute(() -> text(steps)).contains("leather of 1/8 in"));

        frame.menuItemWithPath("File", "Save pattern as PDF…").click();
        Path file = folder.resolve("inches.pdf");
        choose(file);
        await("the PDF", () -> Files.exists(file));
        try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
            assertThat(new PDFTextStripper().getText(pdf))
                    .contains("leather 1/8 in", "leather, in", "leather of 1/8 in")
                    .doesNotContain("leather 3.2 mm", "leather, mm");
        }
    }

    @Test
    void showsWhatWasTypedInTablesAndListsAsItWasTyped() {
        open(OutlinedJobs.outlined());
        chooseInches();
        type("place of the width, from the tip", "2");
        type("width of the knife", "15/16");
        assertThat(execute(() -> texts(window.frame()))).contains("2 from the tip: 15/16, was");
        frame.toggleButton("stage Sheath").click();
        frame.toggleButton("tab Hardware").click();
        frame.table("hardware at hand").enterValue(TableCell.row(0).column(2), "3/32");
        robot.waitForIdle();
        JTable stock = frame.table("hardware at hand").target();
        assertThat(execute(() -> stock.getValueAt(0, 2))).isEqualTo("3/32");
        assertThat(job().spec().hardware().fasteners().get(0).postMm()).isCloseTo(25.4 * 3 / 32, within(1e-12));
        frame.menuItemWithPath("View", "Sizes in mm").click();
        assertThat(execute(() -> stock.getValueAt(0, 2))).isEqualTo("2.38 mm");
        chooseInches();
        assertThat(execute(() -> stock.getValueAt(0, 2))).isEqualTo("3/32");
    }

    @Test
    void saysInTheChosenUnitWhyThereIsNoPattern() {
        Job job = OutlinedJobs.outlined();
        open(job.withSpec(job.spec()
                .withBelt(new BeltAttachment(
                        BeltAttachment.Style.SEWN_STRAP, 38, 4, new StrapLeather(10, OptionalDouble.empty())))));
        frame.toggleButton("stage Sheath").click();
        await("the refusal", () -> frame.textBox("next step").text().contains("A belt strap 10.0 mm wide"));
        chooseInches();
        // 10 mm are 25.2 sixty-fourths of an inch.
        assertThat(frame.textBox("next step").text())
                .contains("A belt strap 25/64 in wide")
                .doesNotContain(" mm");
    }

    /** Returns all wrapped texts, line by line. */
    private static String texts(Container container) {
        StringBuilder texts = new StringBuilder();
        for (Component child : container.getComponents()) {
            if (child instanceof WrappedText text) {
                texts.append(text.getText()).append('\n');
            } else if (child instanceof Container inner) {
                texts.append(texts(inner));
            }
        }
        return texts.toString();
    }

    private void chooseInches() {
        frame.menuItemWithPath("View", "Sizes in inches").click();
        robot.waitForIdle();
    }

    /** The advice beneath the pattern, the longest text that is shown. */
    private static String text(JTable table) {
        StringBuilder text = new StringBuilder();
        for (int row = 0; row < table.getRowCount(); row++) {
            for (int column = 0; column < table.getColumnCount(); column++) {
                text.append(table.getValueAt(row, column)).append('\n');
            }
        }
        return text.toString();
    }
}
