package weltwright.app.gui.widget;

import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.TransferHandler;
import weltwright.message.Messages;

/** Opens a file that is dropped on a window. */
public final class FileDropHandler extends TransferHandler {
    private static final Messages TEXTS = Messages.of(FileDropHandler.class);

    private final transient Consumer<Path> fileOpener;
    private final transient Consumer<String> notifier;

    public FileDropHandler(Consumer<Path> fileOpener, Consumer<String> notifier) {
        this.fileOpener = fileOpener;
        this.notifier = notifier;
    }

    @Override
    public boolean canImport(TransferSupport support) {
        return support.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
    }

    @Override
    public boolean importData(TransferSupport support) {
        if (!canImport(support)) {
            return false;
        }
        try {
            List<?> files = (List<?>) support.getTransferable().getTransferData(DataFlavor.javaFileListFlavor);
            if (files.size() != 1) {
                notifier.accept(TEXTS.text("file-drop-handler.several-files-were-dropped-drop"));
                return false;
            }
            fileOpener.accept(((File) files.get(0)).toPath());
            return true;
        } catch (UnsupportedFlavorException | IOException e) {
            notifier.accept(TEXTS.text("file-drop-handler.what-was-dropped-could-not"));
            return false;
        }
    }
}
