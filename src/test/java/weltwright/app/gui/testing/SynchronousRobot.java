package weltwright.app.gui.testing;

import java.awt.AWTException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.Robot;

/**
 * AssertJ Swing's robot without its pauses. Mouse and keys take their way through the display server; AssertJ pauses
 * for a tenth of a second after each event in the hope that it has come back by then. Here each action returns when the
 * display server has delivered its events and the event queue is empty, which {@link java.awt.Robot#waitForIdle()}
 * finds out by an exchange with the server.
 */
final class SynchronousRobot {
    private SynchronousRobot() {}

    /** Makes a robot that sees only windows shown from now on. */
    static Robot withNewAwtHierarchy() {
        Robot robot = BasicRobot.robotWithNewAwtHierarchy();
        robot.settings().delayBetweenEvents(0);
        robot.settings().eventPostingDelay(0);
        java.awt.Robot display = ofDisplay();
        return (Robot) Proxy.newProxyInstance(
                Robot.class.getClassLoader(), new Class<?>[] {Robot.class}, (proxy, method, arguments) -> {
                    try {
                        if (method.getName().equals("enterText")) {
                            // A letter without a key of its own is posted past the display server: it must not
                            // overtake those before it.
                            for (char letter : ((String) arguments[0]).toCharArray()) {
                                robot.type(letter);
                                display.waitForIdle();
                            }
                            return null;
                        }
                        Object result = method.invoke(robot, arguments);
                        if (method.getReturnType() == void.class) {
                            display.waitForIdle();
                        }
                        return result;
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                });
    }

    private static java.awt.Robot ofDisplay() {
        try {
            return new java.awt.Robot();
        } catch (AWTException e) {
            throw new IllegalStateException(e);
        }
    }
}
