package weltwright.app.gui.testing;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import weltwright.app.gui.shell.FileOpener;

/** Records what the window would have opened. */
public final class OpenedFiles implements FileOpener {
    public final List<Path> files = new CopyOnWriteArrayList<>();
    public final List<Path> inFolders = new CopyOnWriteArrayList<>();

    @Override
    public boolean isAvailable() {
        return true;
    }

    @Override
    public void open(Path file) {
        files.add(file);
    }

    @Override
    public void showInFolder(Path file) {
        inFolders.add(file);
    }
}
