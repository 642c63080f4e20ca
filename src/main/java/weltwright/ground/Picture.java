package weltwright.ground;

import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.photo.Photo;
import weltwright.trouble.Trouble;

/**
 * A photo decoded and turned upright: colour and grey, 8 bits a channel. Holds memory outside the Java heap until it is
 * closed.
 */
public final class Picture implements AutoCloseable {
    private final Mat bgr;
    private final Mat grey;

    private Picture(Mat bgr) {
        this.bgr = bgr;
        this.grey = new Mat();
        Imgproc.cvtColor(bgr, grey, Imgproc.COLOR_BGR2GRAY);
    }

    public static Picture decode(Photo photo) {
        Natives.load();
        MatOfByte file = new MatOfByte(photo.bytes());
        Mat stored = Imgcodecs.imdecode(file, Imgcodecs.IMREAD_COLOR | Imgcodecs.IMREAD_IGNORE_ORIENTATION);
        file.release();
        if (stored.empty()) {
            throw new Trouble(
                    "The picture \"" + photo.name() + "\" is damaged and cannot be decoded.",
                    "Copy it from the camera again, or take another.");
        }
        Mat upright = upright(stored, photo.orientation());
        if (upright != stored) {
            stored.release();
        }
        return new Picture(upright);
    }

    /** Exif 2.32, tag 0x0112: what to do to the stored picture so that its first row is the scene's top. */
    private static Mat upright(Mat stored, int orientation) {
        Mat turned = stored;
        switch (orientation) {
            case 2 -> Core.flip(stored, turned, 1);
            case 3 -> Core.rotate(stored, turned, Core.ROTATE_180);
            case 4 -> Core.flip(stored, turned, 0);
            case 5 -> Core.transpose(stored, turned = new Mat());
            case 6 -> Core.rotate(stored, turned = new Mat(), Core.ROTATE_90_CLOCKWISE);
            case 7 -> {
                Core.transpose(stored, turned = new Mat());
                Core.rotate(turned, turned, Core.ROTATE_180);
            }
            case 8 -> Core.rotate(stored, turned = new Mat(), Core.ROTATE_90_COUNTERCLOCKWISE);
            default -> {}
        }
        return turned;
    }

    /** With a pixel for four, their mean; of an odd row or column at the end there is nothing left. */
    public Picture halved() {
        Size size = new Size(widthPx() / 2, heightPx() / 2);
        Mat even = bgr.submat(0, 2 * (int) size.height, 0, 2 * (int) size.width);
        Mat half = new Mat();
        Imgproc.resize(even, half, size, 0, 0, Imgproc.INTER_AREA);
        even.release();
        return new Picture(half);
    }

    public Mat bgr() {
        return bgr;
    }

    public Mat grey() {
        return grey;
    }

    public int widthPx() {
        return bgr.cols();
    }

    public int heightPx() {
        return bgr.rows();
    }

    public double diagonalPx() {
        return Math.hypot(widthPx(), heightPx());
    }

    @Override
    public void close() {
        bgr.release();
        grey.release();
    }
}
