package weltwright.window;

import static org.assertj.swing.edt.GuiActionRunner.execute;
import static org.assertj.swing.timing.Pause.pause;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.core.Robot;
import org.assertj.swing.edt.FailOnThreadViolationRepaintManager;
import org.assertj.swing.fixture.FrameFixture;
import org.assertj.swing.timing.Condition;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import weltwright.geometry.Point;
import weltwright.job.Job;

/** The window open on a display, and a hand for mouse and keys. */
abstract class OpenWindow {
    private static final int PATIENCE_MS = 60_000;

    Robot robot;
    MainWindow window;
    FrameFixture frame;

    @BeforeEach
    void openWindow() {
        OwnDisplay.assumeThere();
        FailOnThreadViolationRepaintManager.install();
        robot = BasicRobot.robotWithNewAwtHierarchy();
        window = execute(() -> {
            Look.LIGHT.wear();
            return new MainWindow(new MemoryPreferences());
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

    void lay(Job job) {
        execute(() -> window.bench().lay(job, Optional.empty()));
        robot.waitForIdle();
    }

    Job job() {
        return execute(() -> window.bench().job());
    }

    /** The keys pressed one after another and held, then released. */
    void press(int... keys) {
        for (int key : keys) {
            robot.pressKey(key);
        }
        for (int i = keys.length - 1; i >= 0; i--) {
            robot.releaseKey(keys[i]);
        }
        robot.waitForIdle();
    }

    void pull(OutlineView view, Point fromMm, Point toMm) {
        Point from = execute(() -> view.viewport().toPx(fromMm));
        Point to = execute(() -> view.viewport().toPx(toMm));
        robot.moveMouse(view, awt(from));
        robot.pressMouse(MouseButton.LEFT_BUTTON);
        for (double t = 0.25; t <= 1; t += 0.25) {
            robot.moveMouse(view, awt(from.towards(to, t)));
        }
        robot.releaseMouseButtons();
        robot.waitForIdle();
    }

    static java.awt.Point awt(Point px) {
        return new java.awt.Point((int) Math.round(px.x()), (int) Math.round(px.y()));
    }

    static void await(String what, Callable<Boolean> there) {
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
