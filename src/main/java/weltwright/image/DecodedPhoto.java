package weltwright.image;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
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
import weltwright.image.opencv.OpenCvImages;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.image.parallel.JoinedResult;
import weltwright.message.Messages;

/**
 * A decoded, upright photo with 8 bits per channel. Holds memory outside the Java heap until it is closed. Derived
 * pictures that not every caller needs are computed on first use and kept.
 *
 * <p>JPEG colour is decoded at half the resolution, since most files store chroma at that resolution; that halves the
 * time and quarters the memory. Colours at full resolution combine it with the brightness.
 */
public final class DecodedPhoto implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(DecodedPhoto.class);

    /** Weights of blue, green and red in brightness: ITU-R BT.601, as JFIF 1.02 uses it. */
    private static final double[] BRIGHTNESS = {0.114, 0.587, 0.299};

    /**
     * The least width and height that is accepted: 36 mm at 2.2 pixels per mm, the coarsest that can be measured. No
     * knife fits into that.
     */
    private static final int LEAST_SIDE_PX = 80;

    /**
     * The greatest aspect ratio that is accepted, so that a reduced picture keeps some pixels across. Chosen by eye.
     */
    private static final int LONGEST_OVER_SHORTEST = 10;

    private final Supplier<Mat> colourSource;
    private final Mat grey;
    private @Nullable Mat colour;
    private @Nullable Mat bgr;
    private @Nullable DecodedPhoto half;
    private @Nullable InterpolatedChannel levels;

    /** @param colour blue, green, red; of the size of grey, or half as wide and high */
    private DecodedPhoto(Supplier<Mat> colour, Mat grey) {
        this.colourSource = colour;
        this.grey = grey;
    }

    /**
     * Decodes a photo. Brightness and colour of a JPEG file are decoded at the same time; the call returns when the
     * brightness is ready.
     *
     * @throws UserFacingException where the file is damaged or its picture too small to measure in
     */
    public static DecodedPhoto decode(Photo photo) {
        checkSize(photo);
        CompletableFuture<Void> unused = CompletableFuture.runAsync(photo::integrity); // runs while OpenCV is loaded
        OpenCvLibraries.load();
        if (photo.format() != ImageFormat.JPEG || !photo.integrity().regular()) {
            Mat bgr = colour(photo, Imgcodecs.IMREAD_COLOR);
            Mat grey = new Mat();
            Imgproc.cvtColor(bgr, grey, Imgproc.COLOR_BGR2GRAY);
            return new DecodedPhoto(() -> bgr, grey);
        }
        // An odd row or column lies at the other end after rotation, where half a pixel would be missing.
        boolean isEven = photo.widthPx() % 2 == 0 && photo.heightPx() % 2 == 0;
        int half = isEven ? Imgcodecs.IMREAD_REDUCED_COLOR_2 : Imgcodecs.IMREAD_COLOR;
        CompletableFuture<Mat> colour = CompletableFuture.supplyAsync(() -> decoded(photo, half));
        try {
            return new DecodedPhoto(() -> JoinedResult.of(colour), decoded(photo, Imgcodecs.IMREAD_GRAYSCALE));
        } catch (RuntimeException damaged) {
            CompletableFuture<Void> unusedToo = colour.thenAccept(Mat::release);
            throw damaged;
        }
    }

    /**
     * Decodes a photo for the screen: upright, and scaled down where its longer side exceeds a limit.
     *
     * @param longestPx the limit, in pixels
     * @throws UserFacingException where the file is damaged or its picture too small to measure in
     */
    public static BufferedImage image(Photo photo, int longestPx) {
        checkSize(photo);
        OpenCvLibraries.load();
        int longer = Math.max(photo.widthPx(), photo.heightPx());
        Mat bgr = colour(photo, longer < 2 * longestPx ? Imgcodecs.IMREAD_COLOR : Imgcodecs.IMREAD_REDUCED_COLOR_2);
        Mat shown = bgr;
        double scale = (double) longestPx / Math.max(bgr.cols(), bgr.rows());
        if (scale < 1) {
            shown = new Mat();
            Size size = new Size(Math.round(scale * bgr.cols()), Math.round(scale * bgr.rows()));
            Imgproc.resize(bgr, shown, size, 0, 0, Imgproc.INTER_AREA);
            bgr.release();
        }
        BufferedImage image = OpenCvImages.toBufferedImage(shown);
        shown.release();
        return image;
    }

    private static Mat colour(Photo photo, int mode) {
        return isForImageIo(photo) ? decodeByImageIo(photo) : decoded(photo, mode);
    }

    private static void checkSize(Photo photo) {
        int shorter = Math.min(photo.widthPx(), photo.heightPx());
        int longer = Math.max(photo.widthPx(), photo.heightPx());
        if (shorter < LEAST_SIDE_PX || longer > LONGEST_OVER_SHORTEST * shorter) {
            throw new UserFacingException(
                    TEXTS.text("decoded-photo.the-picture-is-only-by", photo.name(), photo.widthPx(), photo.heightPx()),
                    TEXTS.text("decoded-photo.use-the-photo-as-the"));
        }
    }

    /**
     * Whether OpenCV's decoder would write warnings to the terminal, or the format carries nothing that can be checked
     * beforehand.
     */
    private static boolean isForImageIo(Photo photo) {
        return !photo.integrity().regular() || photo.format() == ImageFormat.TIFF || photo.format() == ImageFormat.BMP;
    }

    private static Mat decodeByImageIo(Photo photo) {
        try {
            return turnedUpright(ImageIoDecoder.decode(photo), photo);
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
                TEXTS.text("decoded-photo.the-picture-is-damaged-and", photo.name()),
                TEXTS.text("decoded-photo.copy-it-from-the-camera"),
                cause);
    }

    private static Mat turnedUpright(Mat stored, Photo photo) {
        Mat upright = upright(stored, photo.orientation());
        if (upright != stored) {
            stored.release();
        }
        return upright;
    }

    /** Turns the stored picture upright (Exif 2.32, tag 0x0112). */
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
     * Returns the picture at half the resolution, each pixel the mean of four; an odd last row or column is dropped. It
     * is released with this picture and must not be closed.
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

    /** Returns the colours at full resolution: blue, green, red. Owned by this picture. */
    public synchronized Mat bgr() {
        if (bgr == null) {
            bgr = isColourHalf() ? enlarged() : colour();
        }
        return bgr;
    }

    private Mat enlarged() {
        Mat coarse = new Mat();
        Imgproc.resize(colour(), coarse, grey.size(), 0, 0, Imgproc.INTER_LINEAR);
        Mat matched = withBrightness(grey, coarse);
        coarse.release();
        return matched;
    }

    /** Returns the picture scaled down to a size by averaging over areas: blue, green, red. Owned by the caller. */
    public Mat reduced(Size size) {
        Mat reduced = new Mat();
        Imgproc.resize(size.width <= colour().cols() ? colour() : bgr(), reduced, size, 0, 0, Imgproc.INTER_AREA);
        return reduced;
    }

    /**
     * Returns the colours at points between pixels: blue, green, red. Owned by the caller.
     *
     * @param columns columns of the points, as floats
     * @param rows rows of the points, a matrix of the same size
     * @param interpolation an OpenCV constant such as {@code Imgproc.INTER_LINEAR}
     * @param border an OpenCV constant for points outside the picture, such as {@code Core.BORDER_CONSTANT}
     */
    public Mat remap(Mat columns, Mat rows, int interpolation, int border) {
        Mat remap = new Mat();
        if (!isColourHalf()) {
            Imgproc.remap(colour(), remap, columns, rows, interpolation, border);
            return remap;
        }
        Mat halfColumns = new Mat();
        Mat halfRows = new Mat();
        columns.convertTo(halfColumns, -1, 0.5, -0.25);
        rows.convertTo(halfRows, -1, 0.5, -0.25);
        Mat coarse = new Mat();
        Imgproc.remap(colour(), coarse, halfColumns, halfRows, Imgproc.INTER_LINEAR, border);
        Imgproc.remap(grey, remap, columns, rows, interpolation, border);
        Mat matched = withBrightness(remap, coarse);
        for (Mat used : List.of(halfColumns, halfRows, coarse, remap)) {
            used.release();
        }
        return matched;
    }

    /**
     * Adds the same value to all three channels of each pixel so that its brightness becomes that of the grey picture.
     */
    private static Mat withBrightness(Mat grey, Mat colour) {
        Mat own = new Mat();
        Imgproc.cvtColor(colour, own, Imgproc.COLOR_BGR2GRAY);
        Mat difference = new Mat();
        Mat everywhere = new Mat();
        Core.subtract(grey, own, difference, everywhere, CvType.CV_16S);
        Mat inEach = new Mat();
        Core.merge(List.of(difference, difference, difference), inEach);
        Mat matched = new Mat();
        Core.add(colour, inEach, matched, everywhere, CvType.CV_8U);
        for (Mat used : List.of(own, difference, inEach, everywhere)) {
            used.release();
        }
        return matched;
    }

    /** Returns the colour of a pixel: blue, green, red. */
    public double[] bgrAt(int column, int row) {
        int per = isColourHalf() ? 2 : 1;
        double[] bgr = colour().get(row / per, column / per);
        double difference = grey.get(row, column)[0];
        for (int k = 0; k < 3; k++) {
            difference -= BRIGHTNESS[k] * bgr[k];
        }
        for (int k = 0; k < 3; k++) {
            bgr[k] += difference;
        }
        return bgr;
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

    /** Returns the brightness at full resolution. Owned by this picture. */
    public Mat grey() {
        return grey;
    }

    /** Returns the brightness for access to single values. */
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
        // Waits for the colour, which may still be being decoded and would otherwise not be released.
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
