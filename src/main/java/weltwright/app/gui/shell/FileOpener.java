package weltwright.app.gui.shell;

import java.awt.Desktop;
import java.io.IOException;
import java.nio.file.Path;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/** Opens files by the programs that the desktop has for them. */
public interface FileOpener {
    Messages TEXTS = Messages.of(FileOpener.class);

    /** Returns whether the desktop opens files. */
    boolean isAvailable();

    /**
     * Opens a file.
     *
     * @throws UserFacingException if no program takes it
     */
    void open(Path file);

    /** Shows a file in its folder; opens the folder where the desktop cannot point to a file. */
    void showInFolder(Path file);

    /** Returns that of the user's desktop. */
    static FileOpener ofDesktop() {
        return new FileOpener() {
            @Override
            public boolean isAvailable() {
                return Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.OPEN);
            }

            @Override
            public void open(Path file) {
                try {
                    Desktop.getDesktop().open(file.toFile());
                } catch (IOException | IllegalArgumentException e) {
                    throw new UserFacingException(
                            TEXTS.text("file-opener.no-program-on-this-computer", file.getFileName()),
                            TEXTS.text(
                                    "file-opener.open-it-from-its-folder",
                                    String.valueOf(file.toAbsolutePath().getParent())),
                            e);
                }
            }

            @Override
            public void showInFolder(Path file) {
                Path absolute = file.toAbsolutePath();
                if (Desktop.getDesktop().isSupported(Desktop.Action.BROWSE_FILE_DIR)) {
                    Desktop.getDesktop().browseFileDirectory(absolute.toFile());
                } else if (absolute.getParent() != null) {
                    open(absolute.getParent());
                }
            }
        };
    }
}
