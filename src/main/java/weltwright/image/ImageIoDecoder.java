package weltwright.image;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/**
 * Decodes photos with Java's own readers: slower than OpenCV's, but whatever a file holds, they keep their words to
 * themselves, where OpenCV's libraries write on the terminal.
 */
final class ImageIoDecoder {
    private ImageIoDecoder() {}

    /**
     * The picture as it is stored: blue, green, red, 8 bits each.
     *
     * @throws IOException where it cannot be decoded
     */
    static Mat decoded(Photo photo) throws IOException {
        BufferedImage image = read(photo);
        if (image.getType() != BufferedImage.TYPE_3BYTE_BGR) {
            BufferedImage plain = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_3BYTE_BGR);
            Graphics2D copy = plain.createGraphics();
            copy.drawImage(image, 0, 0, null);
            copy.dispose();
            image = plain;
        }
        Mat bgr = new Mat(image.getHeight(), image.getWidth(), CvType.CV_8UC3);
        bgr.put(0, 0, ((DataBufferByte) image.getRaster().getDataBuffer()).getData());
        return bgr;
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
        } catch (RuntimeException damaged) { // of many kinds, where a file contradicts itself
            throw new IOException(damaged);
        } finally {
            reader.dispose();
        }
    }
}
