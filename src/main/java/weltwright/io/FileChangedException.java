package weltwright.io;

import java.nio.file.Path;
import weltwright.error.UserFacingException;

/** Signals that a file was changed by another process between being read and being replaced. */
public final class FileChangedException extends UserFacingException {
    private static final long serialVersionUID = 1L;

    FileChangedException(Path file) {
        super(
                file + " was changed by another program since it was opened, so it was not written over.",
                "Open it again to see that change, or save under another name.");
    }
}
