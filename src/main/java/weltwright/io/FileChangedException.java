package weltwright.io;

import java.nio.file.Path;
import weltwright.error.UserFacingException;

/** A file that was to be replaced is not what it was when it was read: somebody else has written it meanwhile. */
public final class FileChangedException extends UserFacingException {
    private static final long serialVersionUID = 1L;

    FileChangedException(Path file) {
        super(
                file + " was changed by another program since it was opened, so it was not written over.",
                "Open it again to see that change, or save under another name.");
    }
}
