package weltwright.app.gui.testing;

import static org.assertj.swing.edt.GuiActionRunner.execute;
import static org.assertj.swing.timing.Pause.pause;

import java.awt.AWTEvent;
import java.awt.Toolkit;
import java.awt.event.AWTEventListener;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.core.Robot;
import org.assertj.swing.edt.FailOnThreadViolationRepaintManager;
import org.assertj.swing.fixture.FrameFixture;
import org.assertj.swing.timing.Condition;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import weltwright.app.gui.outline.OutlineCanvas;
import weltwright.app.gui.shell.MainWindow;
import weltwright.app.gui.theme.Theme;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;

/** The window open on a display, and a hand for mouse and keys. */
public abstract class MainWindowTestBase {
    private static final int PATIENCE_MS = 60_000;
    private static final int FEELING_MS = 5_000;

    public Robot robot;
    public MainWindow window;
    public FrameFixture frame;

    @BeforeEach
    void openWindow() {
        VirtualDisplay.assumeThere();
        FailOnThreadViolationRepaintManager.install();
        robot = BasicRobot.robotWithNewAwtHierarchy();
        window = execute(() -> {
            Theme.LIGHT.wear();
            return new MainWindow(new InMemoryPreferences(), new PhoneLensStore(Path.of("target", "no-phones")));
        });
        frame = new FrameFixture(robot, window.frame());
        execute(window::appear);
        robot.waitForIdle();
    }

    @AfterEach
    void closeWindow() {
        if (robot != null) {
            robot.cleanUp();
        }
    }

    public void lay(Job job) {
        execute(() -> window.bench().lay(job, Optional.empty()));
        robot.waitForIdle();
    }

    public Job job() {
        return execute(() -> window.bench().job());
    }

    /** The keys pressed one after another and held, then released. */
    public void press(int... keys) {
        for (int key : keys) {
            robot.pressKey(key);
        }
        felt(KeyEvent.KEY_RELEASED, AWTEvent.KEY_EVENT_MASK, () -> {
            for (int i = keys.length - 1; i >= 0; i--) {
                robot.releaseKey(keys[i]);
            }
        });
    }

    /** Lets the mouse's button go. */
    public void letGo() {
        felt(MouseEvent.MOUSE_RELEASED, AWTEvent.MOUSE_EVENT_MASK, robot::releaseMouseButtons);
    }

    /**
     * Does something with the hand and waits until the window has felt it. What a robot does goes round by the display
     * server; on a busy machine the window may well be idle before it comes back from there.
     *
     * @param event which the window is to feel
     */
    private void felt(int event, long mask, Runnable hand) {
        CountDownLatch felt = new CountDownLatch(1);
        AWTEventListener listener = e -> {
            if (e.getID() == event) {
                felt.countDown();
            }
        };
        Toolkit.getDefaultToolkit().addAWTEventListener(listener, mask);
        try {
            hand.run();
            felt.await(FEELING_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            Toolkit.getDefaultToolkit().removeAWTEventListener(listener);
        }
        robot.waitForIdle();
    }

    public void pull(OutlineCanvas view, Point fromMm, Point toMm) {
        Point from = execute(() -> view.viewport().toPx(fromMm));
        Point to = execute(() -> view.viewport().toPx(toMm));
        robot.moveMouse(view, awt(from));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        for (double t = 0.25; t <= 1; t += 0.25) {
            robot.moveMouse(view, awt(from.towards(to, t)));
        }
        letGo();
    }

    public static java.awt.Point awt(Point px) {
        return new java.awt.Point((int) Math.round(px.x()), (int) Math.round(px.y()));
    }

    public static void await(String what, Callable<Boolean> there) {
        pause(
                new Condition(what) {
                    @Override
                    public boolean test() {
                        try {
                            return there.call();
                        } catch (Exception e) {
                            throw new AssertionError(e);
                        }
                    }
                },
                PATIENCE_MS);
    }
}
