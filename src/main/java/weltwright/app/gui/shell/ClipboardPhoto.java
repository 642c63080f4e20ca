package weltwright.app.gui.shell;

import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.datatransfer.Clipboard;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import weltwright.image.Photo;

/** Reads a photo from the clipboard: a file that was copied, or a picture. */
final class ClipboardPhoto {
    private ClipboardPhoto() {}

    /** Returns the only file on the clipboard. */
    static Optional<Path> file(Clipboard clipboard) {
        return content(clipboard, DataFlavor.javaFileListFlavor)
                .map(content -> (List<?>) content)
                .filter(files -> files.size() == 1)
                .map(files -> ((File) files.get(0)).toPath());
    }

    static Optional<Image> image(Clipboard clipboard) {
        return content(clipboard, DataFlavor.imageFlavor).map(content -> (Image) content);
    }

    private static Optional<Object> content(Clipboard clipboard, DataFlavor flavor) {
        try {
            return clipboard.isDataFlavorAvailable(flavor) ? Optional.of(clipboard.getData(flavor)) : Optional.empty();
        } catch (UnsupportedFlavorException | IOException | IllegalStateException e) {
            return Optional.empty(); // changed meanwhile, or held by another program
        }
    }

    /** Returns a picture as a photo in the format PNG, which loses nothing; takes time. */
    static Photo photo(Image image, String name) throws IOException {
        BufferedImage picture =
                new BufferedImage(image.getWidth(null), image.getHeight(null), BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = picture.createGraphics();
        g.drawImage(image, 0, 0, null);
        g.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(picture, "png", png);
        return Photo.of(name + ".png", png.toByteArray());
    }
}
