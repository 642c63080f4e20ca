package weltwright.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import weltwright.error.UserFacingException;

/** The version of a file before the last one that was written, beside it. */
public final class Backup {
    /** What follows the file's whole name. */
    public static final String ENDING = ".bak";

    private Backup() {}

    /**
     * Where the version before is kept: {@code anouk.wwj.bak} for {@code anouk.wwj}; of a link, beside what it leads
     * to.
     */
    public static Path of(Path file) {
        Path kept = atEndOfLinks(file);
        return kept.resolveSibling(FileNames.beginning(String.valueOf(kept.getFileName()), List.of(ENDING)) + ENDING);
    }

    private static Path atEndOfLinks(Path file) {
        if (!Files.isSymbolicLink(file)) {
            return file;
        }
        try {
            return file.toRealPath();
        } catch (IOException leadsNowhere) {
            return file; // so there is no version before
        }
    }

    /**
     * Keeps what a file holds now, in place of what was kept before; the file itself stays.
     *
     * @param kind what the file holds, and what may be replaced
     */
    static void keep(Path file, FileKind kind) throws IOException {
        Path backup = of(file);
        if (Files.exists(backup) && !(Files.isRegularFile(backup) && kind.mayReplace(backup))) {
            throw new UserFacingException(
                    "The version before cannot be kept as " + backup + ", for that is something else.",
                    "Move that away, or save under another name.");
        }
        try (TemporaryFile temporary = TemporaryFile.beside(backup)) {
            temporary.fill(out -> Files.copy(file, out));
            AccessRights.copy(file, temporary.path());
            Files.setLastModifiedTime(temporary.path(), Files.getLastModifiedTime(file));
            temporary.moveTo(backup);
        }
    }
}
