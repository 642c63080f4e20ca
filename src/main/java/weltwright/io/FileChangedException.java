package weltwright.io;

import java.nio.file.Path;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/** Signals that a file was changed by another process between being read and being replaced. */
public final class FileChangedException extends UserFacingException {
    private static final Messages TEXTS = Messages.of(FileChangedException.class);

    private static final long serialVersionUID = 1L;

    FileChangedException(Path file) {
        super(
                TEXTS.text("file-changed-exception.was-changed-by-another-program", file),
                TEXTS.text("file-changed-exception.open-it-again-to-see"));
    }
}
