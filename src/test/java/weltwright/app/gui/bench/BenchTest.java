package weltwright.app.gui.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Point;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.JDialog;
import javax.swing.JTable;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.data.TableCell;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.pattern.PieceCanvas;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.Operation;
import weltwright.job.Job;
import weltwright.sheath.pattern.Piece;

/** The bench, operated by mouse and keys. */
class BenchTest extends MainWindowTestBase {
    private JTable table;
    private List<Operation> operations;

    @BeforeEach
    void openTheJob() {
        Job job = OutlinedJobs.outlined();
        open(job.withSpec(job.spec().withHandleDepthMm(0)));
        awaitPattern();
        operations = AssemblyPlan.of(pattern()).order().operations();
        frame.toggleButton("stage Bench").click();
        table = frame.table("work steps").target();
        await("the steps", () -> execute(table::getRowCount) == operations.size());
    }

    @Test
    void listsTheOperationsOfTheBenchCardWithToolAndReason() {
        AssemblyPlan plan = AssemblyPlan.of(pattern());
        for (int row = 0; row < operations.size(); row++) {
            assertThat(frame.table("work steps").valueAt(TableCell.row(row).column(2)))
                    .isEqualTo(operations.get(row).work());
            assertThat(frame.table("work steps").valueAt(TableCell.row(row).column(3)))
                    .isEqualTo(operations.get(row).tool());
        }
        var constraint = plan.order().constraints().get(0);
        int after = plan.order().operations().indexOf(constraint.after());
        execute(() -> table.setRowSelectionInterval(after, after));
        assertThat(frame.textBox("why in this order").text()).contains(constraint.why());
    }

    @Test
    void ticksOffByTheSpaceBarAndTheMouseAndTakesItBack() {
        robot.focus(table);
        press(KeyEvent.VK_SPACE);
        press(KeyEvent.VK_SPACE);
        assertThat(job().workDone()).hasSize(2);
        assertThat(execute(table::getSelectedRow)).isEqualTo(2);
        assertThat(frame.table("work steps").valueAt(TableCell.row(0).column(5)))
                .startsWith("done ");
        assertThat(frame.textBox("work done").text()).startsWith("2 of " + operations.size() + " steps done.");
        Rectangle box = execute(() -> table.getCellRect(0, 0, false));
        robot.click(table, new Point(box.x + 16, box.y + 14), MouseButton.LEFT_BUTTON, 1);
        robot.waitForIdle();
        assertThat(job().workDone()).hasSize(1);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(job().workDone()).hasSize(2);
        frame.button("begin again").click();
        answer("Take them back");
        await("no tick", () -> job().workDone().isEmpty());
    }

    /** A job opens at the first step that is open. */
    @Test
    void goesOnWhereTheWorkWasLeft() {
        robot.focus(table);
        press(KeyEvent.VK_SPACE);
        Job left = job();
        open(OutlinedJobs.outlined());
        open(left);
        frame.toggleButton("stage Bench").click();
        await("the next step", () -> execute(table::getSelectedRow) == 1);
        assertThat(frame.table("work steps").valueAt(TableCell.row(0).column(0)))
                .isEqualTo("done");
    }

    @Test
    void drawsThePiecesOfTheSelectedStep() {
        PieceCanvas pieces = (PieceCanvas) robot.finder().findByName("pieces concerned");
        for (int row : new int[] {0, operations.size() / 2, operations.size() - 1}) {
            execute(() -> table.setRowSelectionInterval(row, row));
            assertThat(execute(pieces::pieces))
                    .extracting(Piece::name)
                    .containsExactlyInAnyOrderElementsOf(operations.get(row).pieces().stream()
                            .filter(name -> pattern().pieces().stream()
                                    .anyMatch(piece -> piece.name().equals(name)))
                            .distinct()
                            .toList());
        }
    }

    @Test
    void fillsTheScreenAndComesBackByKeys() {
        robot.focus(table);
        int height = execute(() -> table.getRowHeight(0));
        press(KeyEvent.VK_F11);
        JDialog screen = (JDialog) robot.finder().findByName("bench on the whole screen");
        await(
                "the whole screen",
                () -> execute(() -> screen.getBounds()
                        .equals(screen.getGraphicsConfiguration().getBounds())));
        assertThat(execute(() -> table.getRowHeight(0))).isGreaterThan(height);
        robot.focus(table);
        press(KeyEvent.VK_SPACE);
        assertThat(job().workDone()).hasSize(1);
        press(KeyEvent.VK_ESCAPE);
        await("the window", () -> execute(() -> !screen.isDisplayable()));
        assertThat(execute(() -> table.getTopLevelAncestor() == window.frame())).isTrue();
    }
}
