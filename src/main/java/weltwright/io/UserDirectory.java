package weltwright.io;

import java.nio.file.Path;
import java.util.Locale;
import java.util.function.UnaryOperator;

/**
 * The directories that an operating system has for the files of programs, by its conventions: Known Folders on Windows,
 * the File System Programming Guide on macOS, elsewhere the XDG Base Directory Specification 0.8.
 */
public enum UserDirectory {
    /** What a program writes for itself and its developers: %LOCALAPPDATA%, ~/Library/Logs, ~/.local/state. */
    STATE("LOCALAPPDATA", "AppData/Local", "Weltwright", "Library/Logs", "XDG_STATE_HOME", ".local/state"),

    /** What the user has set or measured: %APPDATA%, ~/Library/Application Support, ~/.config. */
    SETTINGS("APPDATA", "AppData/Roaming", "Weltwright", "Library/Application Support", "XDG_CONFIG_HOME", ".config"),

    /** What can be made again: %LOCALAPPDATA%, ~/Library/Caches, ~/.cache. */
    CACHE("LOCALAPPDATA", "AppData/Local", "Weltwright/Cache", "Library/Caches", "XDG_CACHE_HOME", ".cache");

    private final String windowsVariable;
    private final String windowsDefault;
    private final String windowsName;
    private final String macDirectory;
    private final String xdgVariable;
    private final String xdgDefault;

    UserDirectory(
            String windowsVariable,
            String windowsDefault,
            String windowsName,
            String macDirectory,
            String xdgVariable,
            String xdgDefault) {
        this.windowsVariable = windowsVariable;
        this.windowsDefault = windowsDefault;
        this.windowsName = windowsName;
        this.macDirectory = macDirectory;
        this.xdgVariable = xdgVariable;
        this.xdgDefault = xdgDefault;
    }

    /** Returns this program's directory for the user on this system; it may not exist yet. */
    public Path path() {
        return path(System.getProperty("os.name"), System.getProperty("user.home"), System::getenv);
    }

    /**
     * Returns this program's directory by the conventions of a system. A path from XDG's variables that is not absolute
     * is ignored, as the specification demands.
     *
     * @param system the system property os.name
     * @param home the user's home directory
     * @param environment returns the value of an environment variable, or null
     */
    Path path(String system, String home, UnaryOperator<String> environment) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            String told = environment.apply(windowsVariable);
            return (told == null ? Path.of(home, windowsDefault) : Path.of(told)).resolve(windowsName);
        }
        if (name.startsWith("mac")) {
            return Path.of(home, macDirectory, "Weltwright");
        }
        String told = environment.apply(xdgVariable);
        boolean absolute = told != null && Path.of(told).isAbsolute();
        return (absolute ? Path.of(told) : Path.of(home, xdgDefault)).resolve("weltwright");
    }
}
