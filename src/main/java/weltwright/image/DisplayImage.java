package weltwright.image;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.opencv.core.Mat;
import org.opencv.core.Size;

/** The photo as it was taken, upright, to be shown: every kind of file that can be traced. */
public final class DisplayImage {
    private DisplayImage() {}

    /**
     * Decodes a photo as an image for the screen.
     *
     * @param longestPx of the image; a larger photo is made smaller as a whole
     * @throws weltwright.error.UserFacingException where the file is damaged
     */
    public static BufferedImage image(Photo photo, int longestPx) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            double scale = Math.min(1, (double) longestPx / Math.max(picture.widthPx(), picture.heightPx()));
            Mat shown = picture.reduced(
                    new Size(Math.round(scale * picture.widthPx()), Math.round(scale * picture.heightPx())));
            BufferedImage image = new BufferedImage(shown.cols(), shown.rows(), BufferedImage.TYPE_3BYTE_BGR);
            shown.get(0, 0, ((DataBufferByte) image.getRaster().getDataBuffer()).getData());
            shown.release();
            return image;
        }
    }
}
