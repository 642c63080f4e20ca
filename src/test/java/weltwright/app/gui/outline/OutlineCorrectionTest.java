package weltwright.app.gui.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.assertj.swing.core.MouseButton;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.shell.ToastArea;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;
import weltwright.geometry.curve.OutlineNode;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.Silhouette;
import weltwright.trace.ProgressListener;
import weltwright.trace.outline.UncertainStretch;

/** Corrects outlines by mouse and keys, and undoes it. */
class OutlineCorrectionTest extends MainWindowTestBase {
    /** A smooth point on the knife's back, and the middle of the back beside it. */
    private static final Point ON_THE_BACK = new Point(80, 12);

    private OutlineCanvas view;

    @BeforeEach
    void openTheJob() {
        open(OutlinedJobs.outlined());
        view = (OutlineCanvas) robot.finder().findByName("outline drawing");
    }

    @Test
    void dragsANode() {
        frame.toggleButton("tool Points").click();
        drag(view, ON_THE_BACK, new Point(80, 15));
        assertThat(outline().nodes())
                .anySatisfy(n -> assertThat(n.at().distance(new Point(80, 15))).isLessThan(0.5));
        takenBack();
    }

    @Test
    void addsANodeByDoubleClickAndRemovesItByKey() {
        frame.toggleButton("tool Points").click();
        Polyline curve = OutlinedJobs.KNIFE.outline().sampled(0.25);
        Point place = curve.at(curve.stationOf(new Point(60, 20)));
        robot.click(view, awt(execute(() -> view.viewport().toPx(place))), MouseButton.LEFT_BUTTON, 2);
        robot.waitForIdle();
        assertThat(outline().nodes())
                .hasSize(OutlinedJobs.KNIFE.outline().nodes().size() + 1);
        press(KeyEvent.VK_DELETE);
        assertThat(outline()).isEqualTo(OutlinedJobs.KNIFE.outline());
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        takenBack();
    }

    @Test
    void editsANodeByKeys() {
        robot.focus(view);
        press(KeyEvent.VK_P);
        frame.toggleButton("tool Points").requireSelected();
        press(KeyEvent.VK_PERIOD);
        Outline before = outline();
        press(KeyEvent.VK_UP);
        press(KeyEvent.VK_UP);
        Outline nudged = outline();
        List<OutlineNode> moved =
                nudged.nodes().stream().filter(n -> !before.nodes().contains(n)).toList();
        assertThat(moved).hasSize(1);
        press(KeyEvent.VK_INSERT);
        assertThat(outline().nodes()).hasSize(before.nodes().size() + 1);
        press(KeyEvent.VK_C);
        assertThat(outline().nodes().stream().filter(OutlineNode::sharp)).hasSize(4);
        press(KeyEvent.VK_C);
        assertThat(outline().nodes().stream().filter(OutlineNode::sharp)).hasSize(3);
        press(KeyEvent.VK_DELETE);
        assertThat(outline().nodes()).hasSize(before.nodes().size());
    }

    @Test
    void whatCannotBeIsRefusedInPlainWordsBesideTheTools() {
        Outline triangle = Outline.polygon(List.of(new Point(-60, -15), new Point(60, 0), new Point(-60, 15)));
        open(OutlinedJobs.outlined().withSilhouette(new Silhouette(triangle, OutlinedJobs.KNIFE.landmarks(), true)));
        robot.focus(view);
        press(KeyEvent.VK_PERIOD);
        press(KeyEvent.VK_DELETE);
        assertThat(frame.textBox("tool refusal").text()).contains("three points");
        assertThat(outline()).isEqualTo(triangle);
    }

    @Test
    void makesANodeACornerByTheMenu() {
        robot.click(view, awt(execute(() -> view.viewport().toPx(ON_THE_BACK))), MouseButton.RIGHT_BUTTON, 1);
        robot.waitForIdle();
        frame.menuItemWithPath("Make it a corner").click();
        assertThat(outline().nodes()).contains(new OutlineNode(ON_THE_BACK, true));
        takenBack();
    }

    @Test
    void redrawsAlongTheStrokeWithoutAPhoto() {
        robot.focus(view);
        press(KeyEvent.VK_R);
        draw(new Point(20, 12.3), new Point(40, 15), new Point(60, 15), new Point(80, 12));
        await("the stretch", () -> !outline().equals(OutlinedJobs.KNIFE.outline()));
        Polyline curve = outline().sampled(0.1);
        assertThat(curve.at(curve.stationOf(new Point(50, 15))).distance(new Point(50, 15)))
                .isLessThan(0.7);
        assertThat(job().silhouette().orElseThrow().landmarks().tip())
                .isEqualTo(OutlinedJobs.KNIFE.landmarks().tip());
        takenBack();
    }

    @Test
    void refusesALineThatTurnsBackOnItself() {
        robot.focus(view);
        press(KeyEvent.VK_R);
        // as wide as needed for the smoothed sides not to cross, however few places of the pointer arrive
        draw(new Point(20, 12.1), new Point(48.7, 12), new Point(50, 19), new Point(51.4, 12), new Point(80, 12));
        await("the refusal", () -> execute(() -> !view.errorMessage().isEmpty()));
        assertThat(frame.textBox("tool refusal").text()).contains("turn back on itself");
        assertThat(outline()).isEqualTo(OutlinedJobs.KNIFE.outline());
    }

    @Test
    void theStatedErrorFollowsHandWorkAndCaliper() {
        open(OutlinedJobs.traced(0.95));
        assertThat(execute(() -> OutlineLayers.accuracyText(window.model())))
                .isEqualTo("95 of 100 places within 0.20 mm");
        robot.focus(view);
        press(KeyEvent.VK_R);
        draw(new Point(20, 12.3), new Point(40, 15), new Point(60, 15), new Point(80, 12));
        await("the stretch", () -> !outline().equals(OutlinedJobs.KNIFE.outline()));
        assertThat(execute(() -> OutlineLayers.accuracyText(window.model())))
                .contains("% drawn by hand")
                .doesNotContain("within 0.20 mm");

        open(OutlinedJobs.traced(0.95));
        double width = CaliperMeasure.widthAt(
                OutlinedJobs.KNIFE, OutlinedJobs.KNIFE.landmarks().tip().x() - 60);
        frame.textBox("place of the width, from the tip").deleteText().enterText("60 mm\n");
        frame.textBox("width of the knife")
                .deleteText()
                .enterText(String.format(Locale.ROOT, "%.3f mm\n", width + 1.5));
        await("the measure", () -> !job().calipers().isEmpty());
        // half of the difference lies on either side
        assertThat(execute(() -> OutlineLayers.accuracyText(window.model())))
                .contains("within 0.75 mm", "a caliper differs by 1.5 mm");
        frame.menuItemWithPath("Edit", "Undo").click();
        assertThat(execute(() -> OutlineLayers.accuracyText(window.model())))
                .isEqualTo("95 of 100 places within 0.20 mm");
    }

    @Test
    void endsAStrokeWhenTheToolChanges() {
        robot.focus(view);
        press(KeyEvent.VK_R);
        robot.moveMouse(view, awt(execute(() -> view.viewport().toPx(new Point(20, 14)))));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        robot.moveMouse(view, awt(execute(() -> view.viewport().toPx(new Point(40, 15)))));
        press(KeyEvent.VK_M);
        robot.moveMouse(view, awt(execute(() -> view.viewport().toPx(new Point(60, 15)))));
        releaseMouse();
        ToastArea notificationBar = (ToastArea) robot.finder().findByName("notice", false);
        assertThat(execute(notificationBar::message)).as("a defect").isEmpty();
        assertThat(outline()).isEqualTo(OutlinedJobs.KNIFE.outline());
    }

    @Test
    void redrawsAlongTheEdgeOfThePhoto() {
        Job traced = OutlinedJobs.measured()
                .withPhoto(Photo.read(Path.of("sample-images", "drop-point.jpg")))
                .traced(ProgressListener.NONE);
        Silhouette right = traced.silhouette().orElseThrow();
        Polyline curve = right.outline().sampled(0.2);
        double from = curve.stationOf(new Point(70, 20));
        double to = curve.stationOf(new Point(20, 20));
        // The outline is made wrong by hand: a stretch of the back 1 mm too far out.
        Polyline wrong = curve.stretch(from + 12, to - 12).map(p -> p.plus(new Point(0, 1)));
        Outline bad = OutlineEdit.redrawn(right.outline(), wrong);
        open(traced.withSilhouette(right.withOutline(bad)));
        await(
                "the photo",
                () -> execute(() -> view.viewport().toMm(new Point(0, 0)).x() < -100));
        robot.focus(view);
        press(KeyEvent.VK_R);
        draw(curve.at(from), curve.at(from + 15).plus(new Point(0, 0.5)), curve.at(to - 15), curve.at(to));
        await("the stretch", () -> !outline().equals(bad));
        Polyline anew = outline().sampled(0.1);
        for (double s = from + 3; s < to - 3; s += 1) {
            Point p = curve.at(s);
            assertThat(anew.at(anew.stationOf(p)).distance(p)).as("at %s", p).isLessThan(0.2);
        }
    }

    @Test
    void fitsTheOutlineToAWidthAndRemovesIt() {
        frame.toggleButton("tool Width").click();
        Point middle = new Point(58, 0);
        robot.click(view, awt(execute(() -> view.viewport().toPx(middle))), MouseButton.LEFT_BUTTON, 1);
        robot.waitForIdle();
        awaitFocus("width of the knife");
        frame.textBox("width of the knife").enterText("24.9\n");
        robot.waitForIdle();
        assertThat(job().calipers()).hasSize(1);
        CaliperMeasure kept = job().calipers().get(0);
        assertThat(kept.fromTipMm().orElseThrow()).isCloseTo(60, within(0.6));
        assertThat(kept.on(job().silhouette().orElseThrow())).isCloseTo(24.9, within(1e-6));
        robot.click(robot.finder()
                .find(component -> String.valueOf(component.getName()).startsWith("remove ")));
        robot.waitForIdle();
        assertThat(job().calipers()).isEmpty();
        assertThat(kept.on(job().silhouette().orElseThrow())).isCloseTo(kept.outlineMm(), within(0.05));
    }

    @Test
    void keepsATypedBladeLengthThroughLaterEdits() {
        frame.textBox("length of the blade").enterText("119\n");
        robot.waitForIdle();
        assertThat(job().silhouette().orElseThrow().bladeLengthMm()).isCloseTo(119, within(1e-6));
        frame.toggleButton("tool Points").click();
        drag(view, ON_THE_BACK, new Point(80, 13));
        assertThat(job().silhouette().orElseThrow().bladeLengthMm()).isCloseTo(119, within(1e-6));
        frame.textBox("length of the blade").deleteText().enterText("150\n");
        assertThat(job().silhouette().orElseThrow().bladeLengthMm()).isCloseTo(119, within(1e-6));
        assertThat(frame.textBox("length of the blade").text()).isEqualTo("150");
        press(KeyEvent.VK_ESCAPE);
        frame.textBox("length of the blade").deleteText().enterText("\n");
        assertThat(job().silhouette().orElseThrow().bladeLengthMm()).isCloseTo(118, within(1e-6));
    }

    @Test
    void stepsThroughUncertainStretchesUntilAllAreReviewed() {
        UncertainStretch back = new UncertainStretch(new Point(85, 11.5), new Point(75, 12));
        UncertainStretch edge = new UncertainStretch(new Point(20, -13.2), new Point(30, -13.2));
        Job job = OutlinedJobs.outlined();
        open(new Job(
                job.customer(),
                job.knifeName(),
                job.begun(),
                job.due(),
                job.finished(),
                job.notes(),
                job.photo(),
                job.settings(),
                job.trace(),
                job.silhouette(),
                List.of(back, edge),
                job.calipers(),
                job.spineOnLeft(),
                job.shaping(),
                job.spec(),
                job.cutting(),
                job.workDone(),
                job.typed()));
        frame.button("next unsure").requireText("2 places to look at").click();
        assertThat(middle().distance(new Point(80, 12))).isLessThan(3);
        press(KeyEvent.VK_N);
        assertThat(middle().distance(new Point(25, -13))).isLessThan(3);
        press(KeyEvent.VK_Y);
        assertThat(job().unsure()).containsExactly(back);
        assertThat(middle().distance(new Point(80, 12))).isLessThan(3);
        drag(view, new Point(80, 12), new Point(80, 12));
        frame.toggleButton("tool Points").click();
        drag(view, new Point(80, 12), new Point(80, 13.5));
        assertThat(job().unsure()).as("moved by hand, so looked at").isEmpty();
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job().unsure()).containsExactly(back);
    }

    private Outline outline() {
        return job().silhouette().orElseThrow().outline();
    }

    private Point middle() {
        return execute(() -> view.viewport().centre());
    }

    private void takenBack() {
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(outline()).isEqualTo(OutlinedJobs.KNIFE.outline());
    }

    private void draw(Point... throughMm) {
        robot.moveMouse(view, awt(execute(() -> view.viewport().toPx(throughMm[0]))));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        for (int i = 1; i < throughMm.length; i++) {
            for (double t = 0.2; t < 1.01; t += 0.2) {
                Point to = throughMm[i - 1].towards(throughMm[i], t);
                robot.moveMouse(view, awt(execute(() -> view.viewport().toPx(to))));
            }
        }
        releaseMouse();
    }
}
