package weltwright.window;

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
 * the build), and takes it down after the last. Where Xvfb is not installed the tests go on without: those with a window
 * are skipped, saying what to install.
 */
public final class OwnDisplay implements LauncherSessionListener {
    private static final String WHAT_TO_INSTALL =
            "There is no display for this test. Install Xvfb (Debian, Ubuntu: apt-get install xvfb).";
    private static final int TRIES = 100;
    private static final int TRY_MS = 100;

    private Process server;

    /** Skips the test where there is no display, neither the user's nor one of our own. */
    static void assumeThere() {
        assumeFalse(GraphicsEnvironment.isHeadless(), WHAT_TO_INSTALL);
    }

    @Override
    public void launcherSessionOpened(LauncherSession session) {
        if (!"true".equals(System.getenv("OWN_DISPLAY"))) {
            return;
        }
        String display = System.getenv("DISPLAY");
        try {
            server = new ProcessBuilder("Xvfb", display, "-screen", "0", "1400x900x24", "-nolisten", "tcp")
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(server::destroy));
            awaitSocket(Path.of("/tmp/.X11-unix/X" + display.substring(1)));
        } catch (IOException e) {
            System.err.println(WHAT_TO_INSTALL);
            // Else even a test that draws into memory would go looking for the display.
            System.setProperty("java.awt.headless", "true");
        }
    }

    @Override
    public void launcherSessionClosed(LauncherSession session) {
        if (server != null) {
            server.destroy();
        }
    }

    private void awaitSocket(Path socket) throws IOException {
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
