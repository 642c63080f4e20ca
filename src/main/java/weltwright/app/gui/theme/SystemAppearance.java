package weltwright.app.gui.theme;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * Asks the desktop whether its windows are light or dark: the setting {@code color-scheme} of the freedesktop.org
 * desktops by {@code gsettings}, {@code AppleInterfaceStyle} on macOS, {@code AppsUseLightTheme} in the registry of
 * Windows. Names of the settings from memory.
 *
 * @param command that prints the setting
 * @param dark what is printed for a dark desktop
 */
record SystemAppearance(List<String> command, String dark) {
    /** Chosen by eye: a system that does not answer in this time gets the light theme. */
    private static final int TIMEOUT_MS = 800;

    SystemAppearance {
        command = List.copyOf(command);
    }

    /** Returns that of this system. */
    static SystemAppearance standard() {
        return of(System.getProperty("os.name"));
    }

    /** @param system the system property os.name */
    static SystemAppearance of(String system) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            return new SystemAppearance(
                    List.of(
                            "reg",
                            "query",
                            "HKCU\\Software\\Microsoft\\Windows\\CurrentVersion\\Themes\\Personalize",
                            "/v",
                            "AppsUseLightTheme"),
                    "0x0");
        }
        if (name.startsWith("mac")) {
            return new SystemAppearance(List.of("defaults", "read", "-g", "AppleInterfaceStyle"), "Dark");
        }
        return new SystemAppearance(
                List.of("gsettings", "get", "org.gnome.desktop.interface", "color-scheme"), "prefer-dark");
    }

    /** Returns whether the desktop is dark; false where it does not tell. */
    boolean isDark() {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            process.getOutputStream().close();
            if (!process.waitFor(TIMEOUT_MS, TimeUnit.MILLISECONDS)) {
                process.destroyForcibly();
                return false;
            }
            return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).contains(dark);
        } catch (IOException e) {
            return false; // there is no such program
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
