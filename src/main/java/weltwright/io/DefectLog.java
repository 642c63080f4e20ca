package weltwright.io;

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
import java.util.Set;
import weltwright.message.Messages;

/**
 * Logs defects of the program, for its developers, in a small file in the user's own directory. An entry holds the
 * time, the task, the Java version and system, and the stack trace; nothing of a job but what the exception's message
 * holds.
 *
 * @param file the log; made with the first entry
 */
public record DefectLog(Path file) {
    private static final Messages TEXTS = Messages.of(DefectLog.class);

    /** A log larger than this is started anew. Chosen by eye: some hundred stack traces. */
    private static final long GREATEST_BYTES = 256 * 1024;

    /** The log in the directory that the operating system has for program state. */
    public static DefectLog standard() {
        return new DefectLog(UserDirectory.STATE.path().resolve("defects.log"));
    }

    /**
     * Appends an entry. Throws nothing.
     *
     * @param doing the task that failed, in a few words
     * @param defect the exception that ended it
     * @return a sentence for the user: where the details are, or that they could not be written
     */
    public String append(String doing, Throwable defect) {
        StringWriter entry = new StringWriter();
        PrintWriter lines = new PrintWriter(entry);
        lines.println(TEXTS.text(
                        "defect-log.java-on",
                        LocalDateTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS),
                        doing,
                        System.getProperty("java.version"))
                + System.getProperty("os.name"));
        defect.printStackTrace(lines);
        lines.println();
        lines.flush();
        try {
            Files.createDirectories(file.getParent());
            boolean tooLong = Files.exists(file) && Files.size(file) > GREATEST_BYTES;
            restrictToOwner();
            Files.writeString(
                    file,
                    entry.toString(),
                    StandardOpenOption.WRITE,
                    tooLong ? StandardOpenOption.TRUNCATE_EXISTING : StandardOpenOption.APPEND);
            return TEXTS.text("defect-log.its-makers-need-the-details", file);
        } catch (IOException | RuntimeException unwritable) {
            return TEXTS.text("defect-log.the-details-could-not-be", file);
        }
    }

    /**
     * Lets only the owner read the log: stack traces hold names of files and folders, which may be customers' names. On
     * Windows the user's own directory is private already.
     */
    private void restrictToOwner() throws IOException {
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
        Files.setPosixFilePermissions(file, own); // older versions made it readable for others
        Files.setPosixFilePermissions(file.getParent(), PosixFilePermissions.fromString("rwx------"));
    }
}
