package weltwright.ground;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.photo.Photo;
import weltwright.photo.PhotoFormat;
import weltwright.trouble.Trouble;

/**
 * A photo decoded and turned upright: colour and grey, 8 bits a channel. Holds memory outside the Java heap until it is
 * closed. What steps ask for that not all of them need is made when it is first asked for, and kept.
 */
public final class Picture implements AutoCloseable {
    private final Supplier<Mat> colour;
    private final Mat grey;
    private Mat bgr;
    private Picture half;
    private Levels levels;

    private Picture(Supplier<Mat> colour, Mat grey) {
        this.colour = colour;
        this.grey = grey;
    }

    /**
     * Most files hold brightness apart from colour, and it is read in half the time: what looks at that alone need not
     * wait for the rest.
     */
    public static Picture decode(Photo photo) {
        Natives.load();
        if (photo.format() != PhotoFormat.JPEG) {
            Mat bgr = decoded(photo, Imgcodecs.IMREAD_COLOR);
            Mat grey = new Mat();
            Imgproc.cvtColor(bgr, grey, Imgproc.COLOR_BGR2GRAY);
            return new Picture(() -> bgr, grey);
        }
        CompletableFuture<Mat> colour = CompletableFuture.supplyAsync(() -> decoded(photo, Imgcodecs.IMREAD_COLOR));
        try {
            return new Picture(() -> made(colour), decoded(photo, Imgcodecs.IMREAD_GRAYSCALE));
        } catch (RuntimeException damaged) {
            colour.thenAccept(Mat::release);
            throw damaged;
        }
    }

    private static Mat made(CompletableFuture<Mat> colour) {
        try {
            return colour.join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }

    private static Mat decoded(Photo photo, int channels) {
        MatOfByte file = new MatOfByte(photo.bytes());
        Mat stored = Imgcodecs.imdecode(file, channels | Imgcodecs.IMREAD_IGNORE_ORIENTATION);
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
        return upright;
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

    /**
     * The same with a pixel for four, their mean; of an odd row or column at the end there is nothing left. It goes with
     * this picture, which alone is to be closed.
     */
    public synchronized Picture half() {
        if (half == null) {
            half = new Picture(() -> half(bgr()), half(grey));
        }
        return half;
    }

    private static Mat half(Mat whole) {
        Size size = new Size(whole.cols() / 2, whole.rows() / 2);
        Mat even = whole.submat(0, 2 * (int) size.height, 0, 2 * (int) size.width);
        Mat half = new Mat();
        Imgproc.resize(even, half, size, 0, 0, Imgproc.INTER_AREA);
        even.release();
        return half;
    }

    public synchronized Mat bgr() {
        if (bgr == null) {
            bgr = colour.get();
        }
        return bgr;
    }

    public Mat grey() {
        return grey;
    }

    /** The grey levels, to be read one by one. */
    synchronized Levels levels() {
        if (levels == null) {
            levels = new Levels(grey);
        }
        return levels;
    }

    public int widthPx() {
        return grey.cols();
    }

    public int heightPx() {
        return grey.rows();
    }

    public double diagonalPx() {
        return Math.hypot(widthPx(), heightPx());
    }

    @Override
    public synchronized void close() {
        // Colour that is still being decoded is waited for, or it would never be released.
        bgr();
        release();
    }

    private synchronized void release() {
        if (half != null) {
            half.release();
        }
        if (bgr != null) {
            bgr.release();
        }
        grey.release();
    }
}
