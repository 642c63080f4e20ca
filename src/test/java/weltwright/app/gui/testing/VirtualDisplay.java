package weltwright.app.gui.testing;

import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.platform.launcher.LauncherSession;
import org.junit.platform.launcher.LauncherSessionListener;

/**
 * Brings a display up before the first test, where the build says that there is none (see the profile of that name in
 * the build). It goes when its last client goes, which is this JVM: taking it down sooner would take the JVM with it.
 * Its keys do not repeat: on a busy machine a key is held for longer than a hand would hold it. Where Xvfb is not
 * installed the tests go on without: those with a window are skipped, saying what to install.
 */
public final class VirtualDisplay implements LauncherSessionListener {
    private static final String WHAT_TO_INSTALL =
            "There is no display for this test. Install Xvfb (Debian, Ubuntu: apt-get install xvfb).";
    private static final int TRIES = 100;
    private static final int TRY_MS = 100;

    /** Skips the test where there is no display, neither the user's nor one of our own. */
    public static void assumeThere() {
        assumeFalse(GraphicsEnvironment.isHeadless(), WHAT_TO_INSTALL);
    }

    @Override
    public void launcherSessionOpened(LauncherSession session) {
        if (!"true".equals(System.getenv("OWN_DISPLAY"))) {
            return;
        }
        String display = System.getenv("DISPLAY");
        try {
            Process server = new ProcessBuilder(
                            "Xvfb", display, "-screen", "0", "1400x900x24", "-nolisten", "tcp", "-terminate", "-r")
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            awaitSocket(server, Path.of("/tmp/.X11-unix/X" + display.substring(1)));
            // Now this JVM is a client, whether or not a test opens a window; without one it would stay for ever.
            GraphicsEnvironment.getLocalGraphicsEnvironment();
        } catch (IOException e) {
            System.err.println(WHAT_TO_INSTALL);
            // Else even a test that draws into memory would go looking for the display.
            System.setProperty("java.awt.headless", "true");
        }
    }

    private static void awaitSocket(Process server, Path socket) throws IOException {
        try {
            for (int i = 0; i < TRIES && !Files.exists(socket); i++) {
                if (server.waitFor(TRY_MS, TimeUnit.MILLISECONDS)) {
                    throw new IOException("Xvfb ended with " + server.exitValue());
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
