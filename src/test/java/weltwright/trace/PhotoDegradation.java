package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfInt;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.image.metadata.JpegWithExif;

/**
 * A way to spoil a photo, as cameras, people and programs do. Each gives the same picture whenever it is asked.
 *
 * @param kind what is done, in one or two words
 * @param degree how much of it; empty where there is only one
 * @param version the photo so spoiled
 */
record PhotoDegradation(String kind, String degree, BiFunction<GroundTruthPhoto, Mat, Photo> version) {
    private static final int GOOD_QUALITY = 95;
    private static final int SEED = 20_01;
    private static final double TWO_MEGAPIXELS = 2e6;

    /** A crop leaves the knife this much room. */
    private static final int ROOM_PX = 180;

    /**
     * How far the paint of a polished blade fades into the picture, in pixels: as much as the edges in it are blurred.
     */
    private static final double FADE_PX = 0.8;

    private static final double SECTION = 2.5;

    private static final int ORIENTATION = 0x0112;
    private static final int SHORT = 3;

    static List<PhotoDegradation> all() {
        return Stream.of(
                        Stream.of(new PhotoDegradation("as it is", "", (known, bgr) -> Photo.read(known.picture()))),
                        Stream.of(1.0, 2.0, 3.0, 5.0).map(s -> of("blurred", s + " px", bgr -> blurred(bgr, s))),
                        Stream.of(0.5, 0.3, 0.15)
                                .map(s -> of("darkened", "to " + Math.round(100 * s) + " %", bgr -> scaled(bgr, s))),
                        Stream.of(1.3, 1.7)
                                .map(s -> of("brightened", "to " + Math.round(100 * s) + " %", bgr -> scaled(bgr, s))),
                        Stream.of(6, 15, 30).map(s -> of("noise", s + " grey levels", bgr -> noisy(bgr, s))),
                        Stream.of(new PhotoDegradation("JPEG quality", "30", (known, bgr) -> jpeg(known, bgr, 30))),
                        Stream.of(of("made smaller", "2 MP", PhotoDegradation::twoMegapixels)),
                        Stream.of(of("turned by 90°", "no Exif", bgr -> turned(bgr, Core.ROTATE_90_CLOCKWISE))),
                        Stream.of(new PhotoDegradation(
                                "turned by 90°", "Exif says so", PhotoDegradation::turnedWithExif)),
                        Stream.of(new PhotoDegradation("cropped", "one side off", PhotoDegradation::cropped)),
                        Stream.of(new PhotoDegradation("covered", "one side of the ground", PhotoDegradation::covered)),
                        Stream.of(new PhotoDegradation(
                                "mirror-polished", "ceiling and phone", PhotoDegradation::mirrorsTheRoom)),
                        Stream.of(new PhotoDegradation(
                                "mirror-polished", "the ground itself", PhotoDegradation::mirrorsTheGround)))
                .flatMap(s -> s)
                .toList();
    }

    private interface Change {
        Mat of(Mat bgr);
    }

    private static PhotoDegradation of(String kind, String degree, Change change) {
        return new PhotoDegradation(kind, degree, (known, bgr) -> {
            Mat changed = change.of(bgr);
            Photo photo = jpeg(known, changed, GOOD_QUALITY);
            changed.release();
            return photo;
        });
    }

    private static Photo jpeg(GroundTruthPhoto known, Mat bgr, int quality) {
        return Photo.of(known.name() + ".jpg", encoded(bgr, quality));
    }

    private static byte[] encoded(Mat bgr, int quality) {
        MatOfByte bytes = new MatOfByte();
        Imgcodecs.imencode(".jpg", bgr, bytes, new MatOfInt(Imgcodecs.IMWRITE_JPEG_QUALITY, quality));
        byte[] file = bytes.toArray();
        bytes.release();
        return file;
    }

    private static Mat blurred(Mat bgr, double sigmaPx) {
        Mat blurred = new Mat();
        Imgproc.GaussianBlur(bgr, blurred, new Size(0, 0), sigmaPx);
        return blurred;
    }

    private static Mat scaled(Mat bgr, double by) {
        Mat scaled = new Mat();
        bgr.convertTo(scaled, -1, by);
        return scaled;
    }

    private static Mat noisy(Mat bgr, double sigma) {
        Mat noise = new Mat(bgr.size(), CvType.CV_16SC3);
        Core.setRNGSeed(SEED);
        Core.randn(noise, 0, sigma);
        Mat noisy = new Mat();
        Core.add(bgr, noise, noisy, new Mat(), CvType.CV_8UC3);
        noise.release();
        return noisy;
    }

    private static Mat twoMegapixels(Mat bgr) {
        double by = Math.sqrt(TWO_MEGAPIXELS / bgr.total());
        Mat small = new Mat();
        Imgproc.resize(bgr, small, new Size(0, 0), by, by, Imgproc.INTER_AREA);
        return small;
    }

    private static Mat turned(Mat bgr, int turn) {
        Mat turned = new Mat();
        Core.rotate(bgr, turned, turn);
        return turned;
    }

    /** Exif 2.32, tag Orientation: 6 where the upright picture is the stored one turned clockwise. */
    private static Photo turnedWithExif(GroundTruthPhoto known, Mat bgr) {
        Mat stored = turned(bgr, Core.ROTATE_90_COUNTERCLOCKWISE);
        byte[] file = new JpegWithExif().main(ORIENTATION, SHORT, 6).bytes(encoded(stored, GOOD_QUALITY));
        stored.release();
        return Photo.of(known.name() + ".jpg", file);
    }

    /** The side with the most to give cut off, as near to the knife as may be. */
    private static Photo cropped(GroundTruthPhoto known, Mat bgr) {
        Rect strip = widestStrip(known, bgr);
        Rect rest = strip.width == bgr.cols()
                ? new Rect(0, strip.y == 0 ? strip.height : 0, bgr.cols(), bgr.rows() - strip.height)
                : new Rect(strip.x == 0 ? strip.width : 0, 0, bgr.cols() - strip.width, bgr.rows());
        return jpeg(known, bgr.submat(rest), GOOD_QUALITY);
    }

    /** The same side under a plain brown cloth. */
    private static Photo covered(GroundTruthPhoto known, Mat bgr) {
        Mat covered = bgr.clone();
        covered.submat(widestStrip(known, bgr)).setTo(new Scalar(60, 80, 105));
        Photo photo = jpeg(known, covered, GOOD_QUALITY);
        covered.release();
        return photo;
    }

    private static Rect widestStrip(GroundTruthPhoto known, Mat bgr) {
        Rect knife = Imgproc.boundingRect(polygon(known.pixels("knife_outline")));
        int left = knife.x - ROOM_PX;
        int top = knife.y - ROOM_PX;
        int right = bgr.cols() - (knife.x + knife.width + ROOM_PX);
        int bottom = bgr.rows() - (knife.y + knife.height + ROOM_PX);
        int most = Math.max(Math.max(left, right), Math.max(top, bottom));
        if (most == left) {
            return new Rect(0, 0, most, bgr.rows());
        }
        if (most == right) {
            return new Rect(bgr.cols() - most, 0, most, bgr.rows());
        }
        return new Rect(0, most == top ? 0 : bgr.rows() - most, bgr.cols(), most);
    }

    /** A bright ceiling that grows darker along the blade, and the phone before it. */
    private static Photo mirrorsTheRoom(GroundTruthPhoto known, Mat bgr) {
        return painted(known, bgr, () -> {
            Mat room = new Mat(bgr.size(), CvType.CV_8UC3);
            List<Point> blade = known.pixels("blade_outline");
            Rect box = Imgproc.boundingRect(polygon(blade));
            for (int x = 0; x < bgr.cols(); x++) {
                double along = (x - box.x) / (double) box.width;
                room.col(x).setTo(new Scalar(235 - 90 * along, 235 - 95 * along, 235 - 100 * along));
            }
            Imgproc.rectangle(
                    room,
                    new Rect(box.x + box.width / 3, box.y + box.height / 4, box.width / 4, box.height / 3),
                    new Scalar(28, 26, 25),
                    Imgproc.FILLED);
            return room;
        });
    }

    /** The ground beyond the spine, as a mirror along the spine would show it. */
    private static Photo mirrorsTheGround(GroundTruthPhoto known, Mat bgr) {
        return painted(known, bgr, () -> {
            double spine = known.number("blade_width");
            org.opencv.core.Point[] onBlade = new org.opencv.core.Point[3];
            org.opencv.core.Point[] beyond = new org.opencv.core.Point[3];
            double[][] places = {{0, 0}, {known.number("blade_length"), 0}, {0, spine}};
            for (int i = 0; i < 3; i++) {
                onBlade[i] = cv(known.pixel(new Point(places[i][0], places[i][1])));
                beyond[i] = cv(known.pixel(new Point(places[i][0], 2 * spine - places[i][1])));
            }
            Mat mirror = Imgproc.getAffineTransform(
                    new org.opencv.core.MatOfPoint2f(beyond), new org.opencv.core.MatOfPoint2f(onBlade));
            Mat seen = new Mat();
            Imgproc.warpAffine(
                    bgr, seen, mirror, bgr.size(), Imgproc.INTER_LINEAR, Core.BORDER_REFLECT_101, Scalar.all(0));
            mirror.release();
            // Steel throws back somewhat less than falls on it.
            seen.convertTo(seen, -1, 0.85);
            return seen;
        });
    }

    private static Photo painted(GroundTruthPhoto known, Mat bgr, Supplier<Mat> paint) {
        Mat blade = new Mat(bgr.size(), CvType.CV_8U, Scalar.all(0));
        // Four bits of a pixel's fraction.
        org.opencv.core.Point[] fine = known.pixels("blade_outline").stream()
                .map(p -> new org.opencv.core.Point(16 * p.x(), 16 * p.y()))
                .toArray(org.opencv.core.Point[]::new);
        Imgproc.fillPoly(blade, List.of(new MatOfPoint(fine)), Scalar.all(255), Imgproc.LINE_AA, 4);
        // The handle stands before the blade: seen from behind, the rim of its front hides the blade's beginning.
        Imgproc.fillPoly(blade, List.of(polygon(frontRim(known))), Scalar.all(0), Imgproc.LINE_AA, 0);
        Imgproc.GaussianBlur(blade, blade, new Size(0, 0), FADE_PX);
        Mat weight = new Mat();
        Imgproc.cvtColor(blade, weight, Imgproc.COLOR_GRAY2BGR);
        Mat other = new Mat();
        Core.bitwise_not(weight, other);
        Mat room = paint.get();
        Core.multiply(room, weight, room, 1 / 255.0);
        Core.multiply(bgr, other, other, 1 / 255.0);
        Core.add(room, other, room);
        Photo photo = jpeg(known, room, GOOD_QUALITY);
        for (Mat used : List.of(blade, weight, other, room)) {
            used.release();
        }
        return photo;
    }

    /** The upper half of the handle's front, a super-ellipse as most handles' sections are: common practice. */
    private static List<Point> frontRim(GroundTruthPhoto known) {
        var ys = known.truth()
                .get("handle_outline")
                .valueStream()
                .filter(p -> p.get(0).asDouble() > -1)
                .mapToDouble(p -> p.get(1).asDouble())
                .summaryStatistics();
        double middle = (ys.getMin() + ys.getMax()) / 2;
        double half = (ys.getMax() - ys.getMin()) / 2;
        List<Point> rim = new ArrayList<>();
        for (int i = 0; i <= 40; i++) {
            double turn = Math.PI * i / 40;
            double y = middle + half * Math.signum(Math.cos(turn)) * Math.pow(Math.abs(Math.cos(turn)), 2 / SECTION);
            double z = known.number("handle_thickness") / 2 * Math.pow(Math.sin(turn), 2 / SECTION);
            rim.add(known.pixel(new Point(0, y), z));
        }
        return rim;
    }

    private static MatOfPoint polygon(List<Point> points) {
        return new MatOfPoint(points.stream().map(PhotoDegradation::cv).toArray(org.opencv.core.Point[]::new));
    }

    private static org.opencv.core.Point cv(Point p) {
        return new org.opencv.core.Point(p.x(), p.y());
    }
}
