package weltwright.image.opencv;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.opencv.core.CvType;
import org.opencv.core.Mat;

/** Converts colour pictures, blue, green, red with 8 bits each, between OpenCV's and Java's types. */
public final class OpenCvImages {
    private OpenCvImages() {}

    /** Copies a picture; the argument is not released. */
    public static BufferedImage toBufferedImage(Mat bgr) {
        BufferedImage image = new BufferedImage(bgr.cols(), bgr.rows(), BufferedImage.TYPE_3BYTE_BGR);
        bgr.get(0, 0, pixels(image));
        return image;
    }

    /** Copies a picture of type {@link BufferedImage#TYPE_3BYTE_BGR}. */
    public static Mat toMat(BufferedImage image) {
        Mat bgr = new Mat(image.getHeight(), image.getWidth(), CvType.CV_8UC3);
        bgr.put(0, 0, pixels(image));
        return bgr;
    }

    private static byte[] pixels(BufferedImage image) {
        return ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
    }
}
