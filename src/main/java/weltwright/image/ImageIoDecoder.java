package weltwright.image;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.opencv.core.Mat;
import weltwright.image.opencv.OpenCvImages;

/**
 * Decodes photos with the readers of {@code javax.imageio}. They are slower than OpenCV's but never write to the
 * terminal.
 */
final class ImageIoDecoder {
    private ImageIoDecoder() {}

    /**
     * Decodes the picture as it is stored.
     *
     * @return blue, green, red, 8 bits each
     * @throws IOException where it cannot be decode
     */
    static Mat decode(Photo photo) throws IOException {
        BufferedImage image = read(photo);
        if (image.getType() != BufferedImage.TYPE_3BYTE_BGR) {
            BufferedImage plain = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
            Graphics2D copy = plain.createGraphics();
            copy.drawImage(image, 0, 0, null);
            copy.dispose();
            image = plain;
        }
        return OpenCvImages.toMat(image);
    }

    private static BufferedImage read(Photo photo) throws IOException {
        Iterator<ImageReader> readers =
                ImageIO.getImageReadersByFormatName(photo.format().name());
        if (!readers.hasNext()) {
            throw new IOException("no reader of " + photo.format());
        }
        ImageReader reader = readers.next();
        try (MemoryCacheImageInputStream in =
                new MemoryCacheImageInputStream(new ByteArrayInputStream(photo.bytes()))) {
            reader.setInput(in, true, true);
            return reader.read(0);
        } catch (RuntimeException damaged) { // the readers throw many kinds for inconsistent files
            throw new IOException(damaged);
        } finally {
            reader.dispose();
        }
    }
}
