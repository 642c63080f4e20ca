package weltwright.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/** The backup of a file in the same folder: its content before it was last replaced. */
public final class Backup {
    private static final Messages TEXTS = Messages.of(Backup.class);

    /** Appended to the file's name. */
    public static final String SUFFIX = ".bak";

    private Backup() {}

    /** The path of a file's backup: {@code anouk.wwj.bak} for {@code anouk.wwj}; symbolic links are resolved. */
    public static Path of(Path file) {
        Path target = resolveLinks(file);
        return target.resolveSibling(
                FileNames.truncated(String.valueOf(target.getFileName()), List.of(SUFFIX)) + SUFFIX);
    }

    private static Path resolveLinks(Path file) {
        if (!Files.isSymbolicLink(file)) {
            return file;
        }
        try {
            return file.toRealPath();
        } catch (IOException dangling) {
            return file;
        }
    }

    /**
     * Copies a file to its backup, replacing an older one.
     *
     * @param kind of the file, and of a backup that may be replaced
     * @throws UserFacingException if something else has the name of the backup
     */
    static void make(Path file, FileKind kind) throws IOException {
        Path backup = of(file);
        if (Files.exists(backup) && !(Files.isRegularFile(backup) && kind.mayReplace(backup))) {
            throw new UserFacingException(
                    TEXTS.text("backup.the-version-before-cannot-be", backup),
                    TEXTS.text("backup.move-that-away-or-save"));
        }
        try (TemporaryFile temporary = TemporaryFile.inFolderOf(backup)) {
            temporary.write(out -> Files.copy(file, out));
            AccessRights.copy(file, temporary.path());
            Files.setLastModifiedTime(temporary.path(), Files.getLastModifiedTime(file));
            temporary.moveTo(backup);
        }
    }
}
