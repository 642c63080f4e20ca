package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.swing.JTextField;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.assertj.swing.fixture.DialogFixture;
import org.assertj.swing.fixture.JListFixture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.outline.OutlineCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.knife.Silhouette;
import weltwright.trace.Trace;
import weltwright.trace.ground.GroundChoice;

/** Operates the window by mouse and keys on a display. */
class MainWindowTest extends MainWindowTestBase {
    @TempDir
    private Path folder;

    @Test
    void beginsOnTheStartPageAndShowsTheFirstStepsInAnEmptyJob() {
        frame.panel("home page").requireVisible();
        frame.menuItemWithPath("File", "New job").click();
        frame.panel("first step").requireVisible();
        assertThat(frame.textBox("next step").text()).contains("print the sheet", "drop the photo here");
    }

    @Test
    void closesAnEmptyWindowWithoutAQuestion() {
        execute(window::close);
        assertThat(execute(() -> window.frame().isDisplayable())).isFalse();
    }

    @Test
    void theHelpMenuShowsLicencesWithTheirTexts() {
        frame.menuItemWithPath("Help", "About and licences…").click();
        DialogFixture licences = dialog("licences");
        assertThat(licences.textBox("about the program").text()).contains("Weltwright", "Apache License 2.0");
        JListFixture components = licences.list("licensed components");
        int openBlas = List.of(components.contents()).indexOf("OpenBLAS");
        execute(() -> components.target().setSelectedIndex(openBlas)); // a click may miss a list that still scrolls
        assertThat(licences.textBox("licence text").text())
                .contains("BSD-3-Clause", "Redistribution and use in source and binary forms");
        licences.close();
    }

    @Test
    void updatesThePatternAndIgnoresAnInvalidLength() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        frame.textBox("leather thickness").deleteText().enterText("1/8 in\n");
        awaitPattern();
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
        assertThat(pattern().pieces().get(0).thicknessMm()).isCloseTo(25.4 / 8, within(1e-12));

        frame.textBox("leather thickness").deleteText().enterText("7/0 in\n");
        robot.waitForIdle();
        assertThat(job().spec().leather().thicknessMm()).isCloseTo(25.4 / 8, within(1e-12));
        frame.textBox("leather thickness").requireText("7/0 in");
        assertThat(execute(() -> frame.textBox("leather thickness").target().getClientProperty("JComponent.outline")))
                .isEqualTo("error");
    }

    @Test
    void keepsTheGroundAsOtherMeasuresChange() {
        open(OutlinedJobs.outlined());
        frame.comboBox("ground").selectItem("Ruled mat or paper");
        frame.textBox("distance of the ground's lines").deleteText().enterText("1/2 in\n");
        frame.textBox("handle thickness").deleteText().enterText("20\n");
        robot.waitForIdle();
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
        assertThat(job().settings().ground()).isEqualTo(new GroundChoice.Ruled(12.7));
        assertThat(execute(() -> robot.finder()
                        .findByName("bar across the sheet", JTextField.class, false)
                        .isVisible()))
                .isFalse();
    }

    @Test
    void undoesAndRedoesByKeys() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        frame.comboBox("drawn with").selectItem("Left hand");
        assertThat(job()).isNotEqualTo(OutlinedJobs.outlined());
        Job left = job();
        frame.textBox("ease").focus();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
        frame.comboBox("drawn with").requireSelection("Right hand");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_SHIFT, KeyEvent.VK_Z);
        assertThat(job()).isEqualTo(left);
    }

    @Test
    void dragsALandmarkAlongTheOutline() {
        open(OutlinedJobs.outlined());
        OutlineCanvas view = (OutlineCanvas) robot.finder().findByName("outline drawing");
        drag(view, OutlinedJobs.KNIFE.landmarks().heel(), new Point(20, -40));
        Silhouette pulled = job().silhouette().orElseThrow();
        assertThat(pulled.landmarks().heel().x()).isCloseTo(20, within(3.0));
        assertThat(pulled.landmarks().heel().y()).isCloseTo(-13, within(1.5)); // on the edge, not under the mouse
        assertThat(pulled.outline()).isEqualTo(OutlinedJobs.KNIFE.outline());
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job().silhouette()).contains(OutlinedJobs.KNIFE);
    }

    @Test
    void movesALandmarkByKeys() {
        open(OutlinedJobs.outlined());
        robot.focus(robot.finder().findByName("outline drawing"));
        press(KeyEvent.VK_H);
        press(KeyEvent.VK_LEFT);
        assertThat(job().silhouette().orElseThrow().landmarks().heel())
                .isNotEqualTo(OutlinedJobs.KNIFE.landmarks().heel());
    }

    @Test
    void exchangesEdgeAndSpine() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("other side").click();
        assertThat(job().silhouette()).contains(OutlinedJobs.KNIFE.withOtherSide());
    }

    @Test
    void savesThePatternAsPdfOnTheChosenPaper() throws IOException {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Paper").click();
        frame.comboBox("paper size").selectItem("Letter");
        awaitPattern();
        frame.button("onward").requireText("Save as PDF…").click();
        Path file = folder.resolve("pattern.pdf");
        choose(file);
        await("the PDF", () -> Files.exists(file));
        ToastArea notice = (ToastArea) robot.finder().findByName("notice", false);
        await("the notice", () -> execute(notice::isShowing));
        frame.button("open saved file").click();
        await("the program for it", () -> opened.files.equals(List.of(file)));
        frame.button("show in folder").click();
        await("its folder", () -> opened.inFolders.equals(List.of(file)));
        try (PDDocument pdf = Loader.loadPDF(file.toFile())) {
            PDRectangle page = pdf.getPage(0).getMediaBox();
            // US Letter, 8.5 in by 11 in (ANSI/ASME Y14.1), at 72 points an inch
            assertThat(page.getWidth()).isCloseTo(612, within(0.1f));
            assertThat(page.getHeight()).isCloseTo(792, within(0.1f));
        }
    }

    @Test
    void savesAndOpensAJob() {
        open(OutlinedJobs.empty());
        frame.button("job title").click();
        frame.textBox("customer").enterText("A. Customer");
        frame.textBox("notes").enterText("brown thread");
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_S);
        Path file = folder.resolve("trial"); // the ending is added
        choose(file);
        Path written = folder.resolve("trial" + JobFile.EXTENSION);
        await(
                "the job's file",
                () -> Files.exists(written) && !execute(() -> window.model().hasUnsavedChanges()));
        Job saved = job();
        assertThat(saved.customer()).isEqualTo("A. Customer");
        assertThat(saved.notes()).isEqualTo("brown thread");
        assertThat(JobFile.read(written)).isEqualTo(saved);

        open(OutlinedJobs.empty());
        frame.menuItemWithPath("File", "Open job…").click();
        choose(written);
        await("the job", () -> job().equals(saved));
    }

    @Test
    void savesACopyAndGoesOnWithTheJob() throws IOException {
        Path file = folder.resolve("trial.wwj");
        JobFile.write(OutlinedJobs.outlined(), file);
        drop(file);
        await("the job", () -> execute(() -> window.model().file()).isPresent());
        execute(() -> window.model().change(job -> job.withSpec(job.spec().withEaseMm(2))));
        Job changed = job();
        frame.menuItemWithPath("File", "Save a copy…").click();
        Path copy = folder.resolve("copy.wwj");
        choose(copy);
        await("the copy", () -> Files.exists(copy) && JobFile.read(copy).equals(changed));
        assertThat(execute(() -> window.model().file()).map(Path::getFileName)).contains(Path.of("trial.wwj"));
        assertThat(execute(() -> window.model().hasUnsavedChanges())).isTrue();
        assertThat(JobFile.read(file)).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void offersAnotherPlaceWhereTheFolderOfTheJobIsGone() throws IOException {
        Path stick = Files.createDirectory(folder.resolve("stick"));
        Path file = stick.resolve("trial.wwj");
        JobFile.write(OutlinedJobs.outlined(), file);
        drop(file);
        await("the job", () -> execute(() -> window.model().file()).isPresent());
        Files.delete(file);
        Files.delete(stick);
        execute(() -> window.model().change(job -> job.withSpec(job.spec().withEaseMm(2))));
        frame.menuItemWithPath("File", "Save job").click();
        ToastArea toasts = (ToastArea) robot.finder().findByName("notice", false);
        await("the message", () -> execute(toasts::message).contains("There is no folder"));
        frame.button("way out").click();
        Path elsewhere = folder.resolve("elsewhere.wwj");
        choose(elsewhere);
        await("the save", () -> execute(() -> !window.model().hasUnsavedChanges()));
        assertThat(JobFile.read(elsewhere)).isEqualTo(job());
    }

    @Test
    void takesAPictureFromTheClipboardAndKeepsTheSettings() {
        open(OutlinedJobs.outlined());
        BufferedImage picture = new BufferedImage(400, 300, BufferedImage.TYPE_INT_RGB);
        picture.setRGB(7, 5, 0x123456);
        execute(() -> Toolkit.getDefaultToolkit().getSystemClipboard().setContents(new CopiedImage(picture), null));
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_V);
        await("the photo", () -> job().photo().isPresent());
        assertThat(job().photo().orElseThrow().widthPx()).isEqualTo(400);
        assertThat(job().settings().handleThicknessMm())
                .isEqualTo(OutlinedJobs.outlined().settings().handleThicknessMm());
        assertThat(job().spec()).isEqualTo(OutlinedJobs.outlined().spec());
        assertThat(job().customer()).isEqualTo("A. Customer");
    }

    private record CopiedImage(BufferedImage picture) implements Transferable {
        @Override
        public DataFlavor[] getTransferDataFlavors() {
            return new DataFlavor[] {DataFlavor.imageFlavor};
        }

        @Override
        public boolean isDataFlavorSupported(DataFlavor flavor) {
            return flavor.equals(DataFlavor.imageFlavor);
        }

        @Override
        public Object getTransferData(DataFlavor flavor) {
            return picture;
        }
    }

    @Test
    void asksBeforeClosingAnUnsavedJob() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("other side").click();
        Job changed = job();
        frame.close();
        answer("Cancel");
        assertThat(execute(() -> window.frame().isDisplayable())).isTrue();
        assertThat(job()).isEqualTo(changed);

        frame.close();
        answer("Do not save");
        await("the end", () -> execute(() -> !window.frame().isDisplayable()));
    }

    @Test
    void refusesAFileThatIsNoPhoto() throws IOException {
        open(OutlinedJobs.outlined());
        Path file = Files.writeString(folder.resolve("letter.jpg"), "Dear customer");
        frame.menuItemWithPath("File", "Open photo…").click();
        choose(file);
        ToastArea notificationBar = (ToastArea) robot.finder().findByName("notice", false);
        await("the message", () -> execute(notificationBar::isShowing));
        assertThat(execute(notificationBar::message)).contains("letter.jpg").doesNotContain("Exception");
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void makesAPatternFromAPhotoAndTracesItAgainForOtherMeasures() {
        drop(Path.of("sample-images", "drop-point.jpg"));
        await("the photo", () -> job().photo().isPresent());
        frame.textBox("handle thickness").deleteText().enterText("19 mm\n");
        frame.textBox("spine thickness").deleteText().enterText("3.5\n");
        await("the outline", () -> job().trace().isPresent());
        Job traced = job();
        assertThat(traced.silhouette()).isEqualTo(traced.trace().map(Trace::silhouette));
        frame.button("onward").requireText("To the sheath").click();
        awaitPattern();

        frame.toggleButton("stage Knife").click();
        frame.textBox("handle thickness").deleteText().enterText("25 mm\n");
        await("the outline anew", () -> job().trace().isPresent());
        // A higher blade is nearer to the camera, so the same picture is that of a smaller knife (similar triangles).
        assertThat(job().silhouette().orElseThrow().overallLengthMm())
                .isLessThan(traced.silhouette().orElseThrow().overallLengthMm() - 1);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job()).isEqualTo(traced);
    }

    @Test
    void refusesADroppedFileThatIsNoPhoto() throws IOException {
        drop(Files.writeString(folder.resolve("letter.txt"), "Dear customer"));
        ToastArea notificationBar = (ToastArea) robot.finder().findByName("notice", false);
        await("the message", () -> execute(notificationBar::isShowing));
        assertThat(execute(notificationBar::message)).contains("letter.txt");
        assertThat(execute(() -> window.model().hasUnsavedChanges())).isFalse();
    }
}
