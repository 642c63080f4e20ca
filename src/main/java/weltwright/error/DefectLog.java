package weltwright.error;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * A small file in the user's own directory for what no user can put right: defects of the program, for its makers.
 * Holds the latest of them; nothing of a job goes into it but what a Java exception says.
 *
 * @param file where it is; comes into being with the first defect
 */
public record DefectLog(Path file) {
    private static final long GREATEST_BYTES = 256 * 1024;

    /** Where programs of this system keep such things. */
    public static DefectLog usual() {
        return new DefectLog(directory(System.getProperty("os.name"), System.getProperty("user.home"), System::getenv)
                .resolve("defects.log"));
    }

    /**
     * The directory for a program's state: on Windows %LOCALAPPDATA% (Known Folders), on macOS ~/Library/Logs (File
     * System Programming Guide), elsewhere $XDG_STATE_HOME or ~/.local/state (XDG Base Directory Specification 0.8).
     */
    static Path directory(String system, String home, UnaryOperator<String> environment) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            String local = environment.apply("LOCALAPPDATA");
            return (local == null ? Path.of(home, "AppData", "Local") : Path.of(local)).resolve("Weltwright");
        }
        if (name.startsWith("mac")) {
            return Path.of(home, "Library", "Logs", "Weltwright");
        }
        String state = environment.apply("XDG_STATE_HOME");
        boolean set = state != null && Path.of(state).isAbsolute();
        return (set ? Path.of(state) : Path.of(home, ".local", "state")).resolve("weltwright");
    }

    /**
     * Adds a defect to the file, which begins anew where it has grown too long. Never fails.
     *
     * @param doing what the program was at, in a few words
     * @return a sentence for the user: where the details are, or that they could not be written
     */
    public String keep(String doing, Throwable defect) {
        StringWriter entry = new StringWriter();
        PrintWriter lines = new PrintWriter(entry);
        lines.println(LocalDateTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS) + " " + doing
                + ", Java " + System.getProperty("java.version") + " on " + System.getProperty("os.name"));
        defect.printStackTrace(lines);
        lines.println();
        lines.flush();
        try {
            Files.createDirectories(file.getParent());
            boolean tooLong = Files.exists(file) && Files.size(file) > GREATEST_BYTES;
            makeReadableByItsOwnerAlone();
            Files.writeString(
                    file,
                    entry.toString(),
                    StandardOpenOption.WRITE,
                    tooLong ? StandardOpenOption.TRUNCATE_EXISTING : StandardOpenOption.APPEND);
            return "Its makers need the details, which are in " + file + ".";
        } catch (IOException | RuntimeException unwritable) {
            return "The details could not be written to " + file + ".";
        }
    }

    /**
     * A defect's details hold names of files and folders, which may be customers'. Windows keeps what lies in a user's
     * own directory from other users by itself.
     */
    private void makeReadableByItsOwnerAlone() throws IOException {
        if (!file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            if (Files.notExists(file)) {
                Files.createFile(file);
            }
            return;
        }
        Set<PosixFilePermission> own = PosixFilePermissions.fromString("rw-------");
        if (Files.notExists(file)) {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(own));
        }
        Files.setPosixFilePermissions(file, own); // one that an older version wrote
        Files.setPosixFilePermissions(file.getParent(), PosixFilePermissions.fromString("rwx------"));
    }
}
