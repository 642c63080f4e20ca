package weltwright.image;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.error.UserFacingException;
import weltwright.image.format.ImageFormat;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * A photo decoded and turned upright, 8 bits a channel: brightness at each pixel, and colour. Most files hold colour
 * for four pixels at once only, as most sensors see it; of these it is read no finer, which takes half the time and a
 * quarter of the memory. Holds memory outside the Java heap until it is closed. What steps ask for that not all of them
 * need is made when it is first asked for, and kept.
 */
public final class DecodedPhoto implements AutoCloseable {
    /** Brightness of blue, green and red: ITU-R BT.601, as JFIF 1.02 takes it. */
    private static final double[] BRIGHTNESS = {0.114, 0.587, 0.299};

    /** At the coarsest that can be measured, 2.2 pixels to the millimetre, this is 36 mm: no knife lies in it. */
    private static final int LEAST_SIDE_PX = 80;

    /** A strip is no photo, and made smaller as a whole there would be nothing left of its shorter side. */
    private static final int LONGEST_OVER_SHORTEST = 10;

    private final Supplier<Mat> colourSource;
    private final Mat grey;
    private @Nullable Mat colour;
    private @Nullable Mat bgr;
    private @Nullable DecodedPhoto half;
    private @Nullable InterpolatedChannel levels;

    /** @param colour blue, green, red: as large as grey, or half as wide and high */
    private DecodedPhoto(Supplier<Mat> colour, Mat grey) {
        this.colourSource = colour;
        this.grey = grey;
    }

    /**
     * Brightness and colour are decoded side by side, and what looks at brightness alone need not wait for the other.
     *
     * @throws UserFacingException where the file is damaged, or its picture too small for anything to be found in it
     */
    public static DecodedPhoto decode(Photo photo) {
        checkSize(photo);
        CompletableFuture<Void> unused =
                CompletableFuture.runAsync(photo::check); // both are begun; what asks for the check waits for it
        OpenCvLibraries.load();
        if (photo.format() != ImageFormat.JPEG || !photo.check().regular()) {
            Mat bgr = isForJava(photo) ? decodedByJava(photo) : decoded(photo, Imgcodecs.IMREAD_COLOR);
            Mat grey = new Mat();
            Imgproc.cvtColor(bgr, grey, Imgproc.COLOR_BGR2GRAY);
            return new DecodedPhoto(() -> bgr, grey);
        }
        // A part of a pair at the end would come to the other end where the picture is turned.
        boolean isOfPairs = photo.widthPx() % 2 == 0 && photo.heightPx() % 2 == 0;
        int half = isOfPairs ? Imgcodecs.IMREAD_REDUCED_COLOR_2 : Imgcodecs.IMREAD_COLOR;
        CompletableFuture<Mat> colour = CompletableFuture.supplyAsync(() -> decoded(photo, half));
        try {
            return new DecodedPhoto(() -> made(colour), decoded(photo, Imgcodecs.IMREAD_GRAYSCALE));
        } catch (RuntimeException damaged) {
            CompletableFuture<Void> unusedToo = colour.thenAccept(Mat::release);
            throw damaged;
        }
    }

    private static void checkSize(Photo photo) {
        int shorter = Math.min(photo.widthPx(), photo.heightPx());
        int longer = Math.max(photo.widthPx(), photo.heightPx());
        if (shorter < LEAST_SIDE_PX || longer > LONGEST_OVER_SHORTEST * shorter) {
            throw new UserFacingException(
                    "The picture \"" + photo.name() + "\" is only " + photo.widthPx() + " by " + photo.heightPx()
                            + " pixels: nothing can be measured in it.",
                    "Use the photo as the camera took it, at its full size.");
        }
    }

    private static Mat made(CompletableFuture<Mat> colour) {
        try {
            return colour.join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }

    /** What OpenCV's libraries would have something to say about, or what nobody checked beforehand. */
    private static boolean isForJava(Photo photo) {
        return photo.format() == ImageFormat.TIFF
                || photo.format() == ImageFormat.BMP
                || !photo.check().regular();
    }

    private static Mat decodedByJava(Photo photo) {
        try {
            return turnedUpright(ImageIoDecoder.decoded(photo), photo);
        } catch (IOException e) {
            throw damaged(photo, e);
        }
    }

    private static Mat decoded(Photo photo, int channels) {
        MatOfByte file = new MatOfByte(photo.bytes());
        Mat stored = Imgcodecs.imdecode(file, channels | Imgcodecs.IMREAD_IGNORE_ORIENTATION);
        file.release();
        if (stored.empty()) {
            throw damaged(photo, null);
        }
        return turnedUpright(stored, photo);
    }

    private static UserFacingException damaged(Photo photo, @Nullable Exception cause) {
        return new UserFacingException(
                "The picture \"" + photo.name() + "\" is damaged and cannot be decoded.",
                "Copy it from the camera again, or take another.",
                cause);
    }

    private static Mat turnedUpright(Mat stored, Photo photo) {
        Mat upright = upright(stored, photo.orientation());
        if (upright != stored) {
            stored.release();
        }
        return upright;
    }

    /** Exif 2.32, tag 0x0112: what to do to the stored picture so that its first row is the scene's top. */
    private static Mat upright(Mat stored, int orientation) {
        Mat turned = orientation >= 5 ? new Mat() : stored;
        switch (orientation) {
            case 2 -> Core.flip(stored, turned, 1);
            case 3 -> Core.rotate(stored, turned, Core.ROTATE_180);
            case 4 -> Core.flip(stored, turned, 0);
            case 5 -> Core.transpose(stored, turned);
            case 6 -> Core.rotate(stored, turned, Core.ROTATE_90_CLOCKWISE);
            case 7 -> {
                Core.transpose(stored, turned);
                Core.rotate(turned, turned, Core.ROTATE_180);
            }
            case 8 -> Core.rotate(stored, turned, Core.ROTATE_90_COUNTERCLOCKWISE);
            default -> {}
        }
        return turned;
    }

    /**
     * The same with a pixel for four, their mean; of an odd row or column at the end there is nothing left. It goes
     * with this picture, which alone is to be closed.
     */
    public synchronized DecodedPhoto half() {
        if (half == null) {
            half = new DecodedPhoto(() -> isColourHalf() ? colour() : half(colour()), half(grey));
        }
        return half;
    }

    private static Mat half(Mat whole) {
        int columns = whole.cols() / 2;
        int rows = whole.rows() / 2;
        Size size = new Size(columns, rows);
        Mat even = whole.submat(0, 2 * rows, 0, 2 * columns);
        Mat half = new Mat();
        Imgproc.resize(even, half, size, 0, 0, Imgproc.INTER_AREA);
        even.release();
        return half;
    }

    /** Colour at each pixel: blue, green, red. */
    public synchronized Mat bgr() {
        if (bgr == null) {
            bgr = isColourHalf() ? enlarged() : colour();
        }
        return bgr;
    }

    private Mat enlarged() {
        Mat soft = new Mat();
        Imgproc.resize(colour(), soft, grey.size(), 0, 0, Imgproc.INTER_LINEAR);
        Mat sharp = asBrightAs(grey, soft);
        soft.release();
        return sharp;
    }

    /** The picture made smaller, each of its pixels the mean of what it covers: blue, green, red. */
    public Mat reduced(Size size) {
        Mat reduced = new Mat();
        Imgproc.resize(size.width <= colour().cols() ? colour() : bgr(), reduced, size, 0, 0, Imgproc.INTER_AREA);
        return reduced;
    }

    /**
     * What is seen at places between pixels: blue, green, red.
     *
     * @param columns of the places, and rows: floats, of one size
     * @param interpolation as OpenCV numbers them
     * @param border as OpenCV numbers what is seen outside of the picture
     */
    public Mat seen(Mat columns, Mat rows, int interpolation, int border) {
        Mat seen = new Mat();
        if (!isColourHalf()) {
            Imgproc.remap(colour(), seen, columns, rows, interpolation, border);
            return seen;
        }
        Mat halfColumns = new Mat();
        Mat halfRows = new Mat();
        columns.convertTo(halfColumns, -1, 0.5, -0.25);
        rows.convertTo(halfRows, -1, 0.5, -0.25);
        Mat soft = new Mat();
        Imgproc.remap(colour(), soft, halfColumns, halfRows, Imgproc.INTER_LINEAR, border);
        Imgproc.remap(grey, seen, columns, rows, interpolation, border);
        Mat sharp = asBrightAs(seen, soft);
        for (Mat used : List.of(halfColumns, halfRows, soft, seen)) {
            used.release();
        }
        return sharp;
    }

    /** The colours as they are where brightness is another: all three brighter or darker by as much. */
    private static Mat asBrightAs(Mat grey, Mat colour) {
        Mat own = new Mat();
        Imgproc.cvtColor(colour, own, Imgproc.COLOR_BGR2GRAY);
        Mat brighter = new Mat();
        Core.subtract(grey, own, brighter, new Mat(), CvType.CV_16S);
        Mat inEach = new Mat();
        Core.merge(List.of(brighter, brighter, brighter), inEach);
        Mat sharp = new Mat();
        Core.add(colour, inEach, sharp, new Mat(), CvType.CV_8U);
        for (Mat used : List.of(own, brighter, inEach)) {
            used.release();
        }
        return sharp;
    }

    /** The colour of a pixel: blue, green, red. */
    public double[] at(int column, int row) {
        int per = isColourHalf() ? 2 : 1;
        double[] at = colour().get(row / per, column / per);
        double brighter = grey.get(row, column)[0];
        for (int k = 0; k < 3; k++) {
            brighter -= BRIGHTNESS[k] * at[k];
        }
        for (int k = 0; k < 3; k++) {
            at[k] += brighter;
        }
        return at;
    }

    private synchronized Mat colour() {
        if (colour == null) {
            colour = colourSource.get();
        }
        return colour;
    }

    private boolean isColourHalf() {
        return colour().cols() < grey.cols();
    }

    public Mat grey() {
        return grey;
    }

    /** The grey levels, to be read one by one. */
    public synchronized InterpolatedChannel levels() {
        if (levels == null) {
            levels = new InterpolatedChannel(grey);
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
        colour();
        release();
    }

    private synchronized void release() {
        if (half != null) {
            half.release();
        }
        if (bgr != null) {
            bgr.release();
        }
        if (colour != null) {
            colour.release();
        }
        grey.release();
    }
}
