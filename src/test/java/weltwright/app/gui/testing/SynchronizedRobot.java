package weltwright.app.gui.testing;

import java.awt.Toolkit;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import org.assertj.swing.core.Robot;

/**
 * A robot whose actions end when the window has received and handled their events. These take their way through the
 * display server, and on a busy machine the queue of events may be empty before they arrive: AssertJ Swing's robot
 * alone does not wait for them.
 */
final class SynchronizedRobot {
    private static final long TIMEOUT_MS = 10_000;

    /** Between two actions. AssertJ Swing's own 60 ms, and 100 ms after each, are there because it does not wait. */
    private static final int DELAY_MS = 10;

    private static final Method SYNCHRONIZE = synchronize();

    private SynchronizedRobot() {}

    static Robot of(Robot robot) {
        robot.settings().delayBetweenEvents(DELAY_MS);
        robot.settings().eventPostingDelay(DELAY_MS);
        return (Robot) Proxy.newProxyInstance(
                Robot.class.getClassLoader(), new Class<?>[] {Robot.class}, (proxy, method, args) -> {
                    try {
                        Object result = method.invoke(robot, args);
                        if (method.getReturnType() == void.class) {
                            synchronize(robot);
                        }
                        return result;
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    /** Waits until the toolkit has no events of the display server left, and the window none of the toolkit. */
    private static void synchronize(Robot robot) throws IllegalAccessException {
        try {
            SYNCHRONIZE.invoke(Toolkit.getDefaultToolkit(), TIMEOUT_MS);
        } catch (InvocationTargetException endlessEvents) {
            robot.waitForIdle(); // something is animated; the events of the action were among the first
        }
    }

    /** The JDK's own tests wait with this method; the tests here are started with its package exported. */
    private static Method synchronize() {
        try {
            return Class.forName("sun.awt.SunToolkit").getMethod("realSync", long.class);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
