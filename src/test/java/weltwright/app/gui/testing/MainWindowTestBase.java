package weltwright.app.gui.testing;

import static org.assertj.swing.edt.GuiActionRunner.execute;
import static org.assertj.swing.timing.Pause.pause;

import com.formdev.flatlaf.util.UIScale;
import java.awt.AWTEvent;
import java.awt.Component;
import java.awt.Toolkit;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.event.AWTEventListener;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JFileChooser;
import javax.swing.JRootPane;
import javax.swing.SwingUtilities;
import javax.swing.ToolTipManager;
import javax.swing.TransferHandler;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.core.Robot;
import org.assertj.swing.edt.FailOnThreadViolationRepaintManager;
import org.assertj.swing.finder.JFileChooserFinder;
import org.assertj.swing.finder.JOptionPaneFinder;
import org.assertj.swing.finder.WindowFinder;
import org.assertj.swing.fixture.DialogFixture;
import org.assertj.swing.fixture.FrameFixture;
import org.assertj.swing.fixture.JOptionPaneFixture;
import org.assertj.swing.timing.Condition;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.leather.LeatherFiles;
import weltwright.app.gui.shell.Application;
import weltwright.app.gui.shell.MainWindow;
import weltwright.app.gui.theme.Theme;
import weltwright.app.gui.widget.WrappedText;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.job.MakerDefaultsFile;
import weltwright.job.OpenJobs;
import weltwright.job.PhoneLensStore;
import weltwright.job.RecentJobs;
import weltwright.job.StockShelf;
import weltwright.sheath.pattern.Pattern;

/** Opens the main window on a display before each test, with a robot for mouse and keys. */
public abstract class MainWindowTestBase {
    private static final int CONDITION_TIMEOUT_MS = 60_000;
    private static final int EVENT_TIMEOUT_MS = 5_000;

    public Robot robot;
    public MainWindow window;
    public FrameFixture frame;
    public final OpenedFiles opened = new OpenedFiles();

    @TempDir
    public Path state;

    public Application application;

    /** Returns by how much everything in the window is larger than usual. */
    protected float zoomFactor() {
        return 1;
    }

    @BeforeEach
    void openWindow() {
        VirtualDisplay.assumeThere();
        FailOnThreadViolationRepaintManager.install();
        robot = BasicRobot.robotWithNewAwtHierarchy();
        window = execute(() -> {
            UIScale.setZoomFactor(zoomFactor());
            ToolTipManager.sharedInstance().setEnabled(false); // hides a tip of the test before: it takes the first Esc
            ToolTipManager.sharedInstance().setEnabled(true);
            Theme.LIGHT.install();
            application = new Application(
                    new InMemoryPreferences(),
                    new PhoneLensStore(state.resolve("phones")),
                    new LeatherFiles(new StockShelf(state.resolve("stock")), state.resolve("prices.json")),
                    new MakerDefaultsFile(state.resolve("defaults.json")),
                    opened,
                    new OpenJobs(state.resolve("open-jobs")),
                    new RecentJobs(state.resolve("recent-jobs.json")));
            return application.newWindow();
        });
        frame = new FrameFixture(robot, window.frame());
        execute(window::show);
        robot.waitForIdle();
    }

    @AfterEach
    void closeWindow() {
        if (robot != null) {
            execute(() -> application.windows().forEach(this::closeWithoutQuestion));
            robot.cleanUp();
            execute(() -> UIScale.setZoomFactor(1));
        }
    }

    /** So that none writes into the folder of the test any more. */
    private void closeWithoutQuestion(MainWindow open) {
        open.model().open(open.model().job(), Optional.empty());
        open.close();
    }

    public void open(Job job) {
        execute(() -> window.model().open(job, Optional.empty()));
        robot.waitForIdle();
    }

    public Job job() {
        return execute(() -> window.model().job());
    }

    /** Presses the keys one after another, then releases them in reverse order. */
    public void press(int... keys) {
        for (int key : keys) {
            robot.pressKey(key);
        }
        performAndAwait(KeyEvent.KEY_RELEASED, AWTEvent.KEY_EVENT_MASK, () -> {
            for (int i = keys.length - 1; i >= 0; i--) {
                robot.releaseKey(keys[i]);
            }
        });
    }

    /** Presses the left mouse button at a point of a component. */
    public void pressMouse(Component component, Point px) {
        robot.moveMouse(component, awt(px));
        performAndAwait(
                MouseEvent.MOUSE_PRESSED, AWTEvent.MOUSE_EVENT_MASK, () -> robot.pressMouse(MouseButton.LEFT_BUTTON));
    }

    /** Releases the mouse button. */
    public void releaseMouse() {
        performAndAwait(MouseEvent.MOUSE_RELEASED, AWTEvent.MOUSE_EVENT_MASK, robot::releaseMouseButtons);
    }

    /**
     * Performs an action of the robot and waits until the window has received the event. Events of the robot take their
     * way through the display server, and on a busy machine {@code waitForIdle} may return before they arrive.
     *
     * @param event id of the event to wait for
     * @param mask of its kind
     */
    private void performAndAwait(int event, long mask, Runnable action) {
        CountDownLatch received = new CountDownLatch(1);
        AWTEventListener listener = e -> {
            if (e.getID() == event) {
                received.countDown();
            }
        };
        Toolkit.getDefaultToolkit().addAWTEventListener(listener, mask);
        try {
            action.run();
            received.await(EVENT_TIMEOUT_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            Toolkit.getDefaultToolkit().removeAWTEventListener(listener);
        }
        robot.waitForIdle();
    }

    /** Puts a text into a field in place of its own, as by keys, and presses Enter. */
    public void type(String field, String text) {
        frame.textBox(field).deleteText().enterText(text + "\n");
        robot.waitForIdle();
    }

    public Pattern pattern() {
        return execute(() -> window.pattern().orElseThrow());
    }

    public void awaitPattern() {
        await("the pattern", () -> execute(() -> window.pattern().isPresent()));
    }

    /** Waits until the button for the next step shows a text. */
    public void awaitNextStep(String text) {
        JButton onward = robot.finder().findByName(window.frame(), "onward", JButton.class, false);
        await("the button " + text, () -> execute(() -> onward.isShowing() && text.equals(onward.getText())));
    }

    /** Waits until a component has the focus. */
    public void awaitFocus(String name) {
        await(
                "the focus on " + name,
                () -> execute(() -> window.frame().getFocusOwner() != null
                        && name.equals(window.frame().getFocusOwner().getName())));
    }

    public void drag(DrawingCanvas view, Point fromMm, Point toMm) {
        Point from = execute(() -> view.viewport().toPx(fromMm));
        Point to = execute(() -> view.viewport().toPx(toMm));
        pressMouse(view, from);
        for (double t = 0.25; t <= 1; t += 0.25) {
            robot.moveMouse(view, awt(from.towards(to, t)));
        }
        releaseMouse();
    }

    /** The texts in the open list of findings, on the event thread. */
    public String findings() {
        return robot
                .finder()
                .findAll(component -> component instanceof WrappedText
                        && component.isShowing()
                        && SwingUtilities.getAncestorNamed("findings", component) != null)
                .stream()
                .map(text -> ((WrappedText) text).getText())
                .collect(Collectors.joining("\n"));
    }

    public static java.awt.Point awt(Point px) {
        return new java.awt.Point((int) Math.round(px.x()), (int) Math.round(px.y()));
    }

    public static void await(String description, Callable<Boolean> condition) {
        pause(
                new Condition(description) {
                    @Override
                    public boolean test() {
                        try {
                            return condition.call();
                        } catch (Exception e) {
                            throw new IllegalStateException(e); // an error would be swallowed
                        }
                    }
                },
                CONDITION_TIMEOUT_MS);
    }

    /** As the desktop hands a file over that is dropped on the main window. */
    public void drop(Path file) {
        drop(window.frame().getRootPane(), file);
    }

    /** As the desktop hands a file over that is dropped on a window. */
    public void drop(JRootPane root, Path file) {
        Transferable dropped = new Transferable() {
            @Override
            public DataFlavor[] getTransferDataFlavors() {
                return new DataFlavor[] {DataFlavor.javaFileListFlavor};
            }

            @Override
            public boolean isDataFlavorSupported(DataFlavor flavor) {
                return flavor.equals(DataFlavor.javaFileListFlavor);
            }

            @Override
            public Object getTransferData(DataFlavor flavor) {
                return List.of(file.toFile());
            }
        };
        execute(() -> {
            root.getTransferHandler().importData(new TransferHandler.TransferSupport(root, dropped));
        });
        robot.waitForIdle();
    }

    /**
     * Presses a button of the question that is asked. Not with the mouse: without a window manager a dialog may still
     * be on its way to its place when it is there.
     */
    public void answer(String button) {
        JOptionPaneFixture question = JOptionPaneFinder.findOptionPane()
                .withTimeout(CONDITION_TIMEOUT_MS)
                .using(robot);
        execute(() -> question.buttonWithText(button).target().doClick());
        await("the question to go", () -> execute(() -> !question.target().isShowing()));
    }

    /**
     * Returns a dialog once it has the keyboard. Without a window manager it has it some time after it is shown, and
     * keys that are pressed before are lost.
     */
    public DialogFixture dialog(String name) {
        DialogFixture dialog =
                WindowFinder.findDialog(name).withTimeout(CONDITION_TIMEOUT_MS).using(robot);
        await(
                "the keyboard in the dialog " + name,
                () -> execute(() -> {
                    boolean focused = dialog.target().getFocusOwner() != null;
                    if (!focused) {
                        dialog.target().toFront();
                    }
                    return focused;
                }));
        return dialog;
    }

    /** Presses a button of a dialog that has just opened, not with the mouse, for the same reason as an answer. */
    public static void pressButton(DialogFixture dialog, String name) {
        JButton button = dialog.button(name).target();
        SwingUtilities.invokeLater(button::doClick);
    }

    /** Chooses a file in the dialog that is open. */
    public void choose(Path file) {
        JFileChooser chooser = JFileChooserFinder.findFileChooser()
                .withTimeout(CONDITION_TIMEOUT_MS)
                .using(robot)
                .target();
        execute(() -> {
            chooser.setSelectedFile(file.toFile());
            chooser.approveSelection();
        });
        robot.waitForIdle();
    }
}
