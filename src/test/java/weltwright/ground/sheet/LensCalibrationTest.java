package weltwright.ground.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfDouble;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.MatOfPoint3f;
import org.opencv.core.Point3;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.camera.lens.CalibratedLens;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.ground.RenderedGround;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.units.PrintScale;

/** One lens from several views of the sheet, against the lens that made them and against OpenCV's calibration. */
class LensCalibrationTest {
    private static final int WIDTH = 4032;
    private static final int HEIGHT = 3024;
    private static final double FOCAL = 3105.5;
    private static final double K1 = 0.034;
    private static final double K2 = -0.021;
    private static final double NOISE_PX = 0.08;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void findsTheLensWithinWhatItClaims() {
        LensCalibration.Lens lens = LensCalibration.fit(views(6, 1), WIDTH, HEIGHT);
        assertThat(Math.log(lens.focalPx() / FOCAL))
                .isCloseTo(0, within(4 * lens.errors().focal()));
        assertThat(lens.k1()).isCloseTo(K1, within(4 * lens.errors().k1()));
        assertThat(lens.k2()).isCloseTo(K2, within(4 * lens.errors().k2()));
        assertThat(lens.errors().focal()).isLessThan(0.001);
    }

    /** The same model, the same points, another program. */
    @Test
    void agreesWithOpenCvOnTheSamePoints() {
        List<List<ControlPoint>> views = views(6, 2);
        LensCalibration.Lens lens = LensCalibration.fit(views, WIDTH, HEIGHT);
        OpenCv theirs = OpenCv.calibrate(views, WIDTH, HEIGHT, Calib3d.CALIB_FIX_PRINCIPAL_POINT);
        // Theirs takes the sheet for true and every point for good, so both differ by less than either may be off.
        assertThat(Math.log(lens.focalPx() / theirs.focalPx))
                .isCloseTo(0, within(lens.errors().focal()));
        assertThat(lens.k1()).isCloseTo(theirs.k1, within(lens.errors().k1()));
        assertThat(lens.k2()).isCloseTo(theirs.k2, within(lens.errors().k2()));
        assertThat(lens.errors().k1() / theirs.k1Sigma).isBetween(0.6, 1.7);
        assertThat(lens.errors().k2() / theirs.k2Sigma).isBetween(0.6, 1.7);
        // That the print may be stretched adds a little to what is not known of the focal length.
        assertThat(lens.errors().focal() / (theirs.focalSigmaPx / theirs.focalPx))
                .isBetween(0.8, 4.0);
    }

    /**
     * Views of a chessboard through a lens of an old camera, published with OpenCV, and the focal length published with
     * them. That lens's axis meets the picture 23 pixels from its middle, as OpenCV finds where it may look for it;
     * ours expects it within 3, and has to lose some of the difference elsewhere.
     */
    @Test
    void agreesOnPublishedViews() throws IOException {
        JsonNode file = new ObjectMapper()
                .readTree(Path.of("src/test/resources/chessboard/views.json").toFile());
        List<List<ControlPoint>> views = new ArrayList<>();
        for (JsonNode view : file.get("views")) {
            List<ControlPoint> corners = new ArrayList<>();
            for (JsonNode corner : view.get("corners")) {
                int column = corners.size() % file.get("across").asInt();
                int row = corners.size() / file.get("across").asInt();
                corners.add(new ControlPoint(
                        new Point(column, -row).times(file.get("square_mm").asDouble()),
                        new Point(corner.get(0).asDouble(), corner.get(1).asDouble())));
            }
            views.add(corners);
        }
        int width = file.get("width").asInt();
        int height = file.get("height").asInt();
        LensCalibration.Lens lens = LensCalibration.fit(views, width, height);
        OpenCv theirs = OpenCv.calibrate(views, width, height, 0);
        double published = file.get("published_focal_px").asDouble();
        assertThat(views).hasSize(9);
        assertThat(lens.focalPx()).isCloseTo(published, within(0.01 * published));
        assertThat(lens.focalPx()).isCloseTo(theirs.focalPx, within(0.01 * published));
        assertThat(lens.k1()).isCloseTo(theirs.k1, within(0.03));
        assertThat(lens.k2()).isCloseTo(theirs.k2, within(0.08));
    }

    /** Source: the definition of a standard deviation, over fresh noise. */
    @Test
    void saysHowFarItMayBeOff() {
        double[] squares = new double[3];
        double[] claimed = new double[3];
        int times = 24;
        for (int i = 0; i < times; i++) {
            LensCalibration.Lens lens = LensCalibration.fit(views(5, 10 + i), WIDTH, HEIGHT);
            double[] off = {Math.log(lens.focalPx() / FOCAL), lens.k1() - K1, lens.k2() - K2};
            double[] errors = {
                lens.errors().focal(), lens.errors().k1(), lens.errors().k2()
            };
            for (int k = 0; k < 3; k++) {
                squares[k] += off[k] * off[k] / times;
                claimed[k] += errors[k] / times;
            }
        }
        for (int k = 0; k < 3; k++) {
            // The print of these views is not stretched at all, so that much of what is claimed does not come.
            assertThat(claimed[k] / Math.sqrt(squares[k]))
                    .as("claimed over true error %d", k)
                    .isBetween(0.6, 3.0);
        }
    }

    /** One photo lies on its side, one was saved at half the size; the lens is the same. */
    @Test
    void measuresAPhoneFromItsPhotos() {
        List<Photo> photos = new ArrayList<>(rendered());
        photos.set(1, changed(photos.get(1), true));
        photos.set(2, changed(photos.get(2), false));
        CalibratedLens lens = LensCalibration.of(photos, Optional.of("Trial phone"), PrintScale.TRUE);
        assertThat(lens.name()).isEqualTo("Trial phone");
        assertThat(lens.camera()).isEmpty();
        assertThat(lens.exifFocal35mm()).isEqualTo(OptionalDouble.empty());
        assertThat(lens.views()).isEqualTo(4);
        double focal35mm = 900 * CalibratedLens.DIAGONAL_35MM / Math.hypot(1200, 900);
        assertThat(lens.focal35mm()).isCloseTo(focal35mm, within(0.005 * focal35mm));
        assertThat(lens.k1()).isCloseTo(0.02, within(0.01));
        LensPrior forLargerPhotos = lens.prior(changed(photos.get(0), false));
        assertThat(forLargerPhotos.focalPx()).isCloseTo(450, within(0.005 * 450));
    }

    @Test
    void refusesTooFewPhotosAndThoseThatSayLittle() {
        List<Photo> photos = rendered();
        assertTrouble(photos.subList(0, 2), Optional.of("x"), "2 are given");
        assertTrouble(photos, Optional.empty(), "name of your own");
        Photo above = scene(0, 0).photo(new RenderedSheet(ReferenceSheet.A4), 1);
        assertTrouble(List.of(above, above, above), Optional.of("x"), "tell the focal length only to");
    }

    private static void assertTrouble(List<Photo> photos, Optional<String> name, String words) {
        assertThatThrownBy(() -> LensCalibration.of(photos, name, PrintScale.TRUE))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(words);
    }

    private static List<Photo> rendered() {
        RenderedSheet sheet = new RenderedSheet(ReferenceSheet.A4);
        return List.of(
                scene(22, 90).photo(sheet, 1),
                scene(25, 180).photo(sheet, 1),
                scene(24, 45).photo(sheet, 1),
                scene(3, 0).photo(sheet, 1));
    }

    private static RenderedGround scene(double tilt, double turn) {
        return new RenderedGround(900, 0.02, tilt, turn, 380, 0.7, 1);
    }

    /** Turned by a quarter, or at half its size. */
    private static Photo changed(Photo photo, boolean turned) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            Mat other = new Mat();
            if (turned) {
                Core.rotate(picture.bgr(), other, Core.ROTATE_90_CLOCKWISE);
            } else {
                Imgproc.resize(picture.bgr(), other, new Size(), 0.5, 0.5, Imgproc.INTER_AREA);
            }
            MatOfByte png = new MatOfByte();
            Imgcodecs.imencode(".png", other, png);
            return Photo.of("changed.png", png.toArray());
        }
    }

    /** The sheet seen by one lens, tilted each time to another side. */
    private static List<List<ControlPoint>> views(int count, long seed) {
        Random random = new Random(seed);
        List<List<ControlPoint>> views = new ArrayList<>();
        for (int v = 0; v < count; v++) {
            double side = 2 * Math.PI * v / count;
            double tilt = Math.toRadians(v == 0 ? 2 : 25);
            CameraView view = new CameraView(
                    new PinholeCamera(FOCAL, (WIDTH - 1) / 2.0, (HEIGHT - 1) / 2.0, K1, K2),
                    turned(tilt, side),
                    new Vector3(5 * random.nextGaussian(), 5 * random.nextGaussian(), 360 + 20 * v));
            List<ControlPoint> seen = new ArrayList<>();
            for (int id = 0; id < ReferenceSheet.A4.cornerCount(); id++) {
                if (ReferenceSheet.A4.isCornerPrinted(id)) {
                    Point at = ReferenceSheet.A4.corner(id);
                    Point noise = new Point(NOISE_PX * random.nextGaussian(), NOISE_PX * random.nextGaussian());
                    seen.add(new ControlPoint(
                            at, view.pixel(Plane.GROUND.pointAbove(at)).plus(noise)));
                }
            }
            views.add(seen);
        }
        return views;
    }

    /** Looking straight down, then tilted about an axis in the ground. */
    private static Vector3 turned(double tilt, double side) {
        Mat down = new Mat();
        Calib3d.Rodrigues(new MatOfDouble(Math.PI, 0, 0), down);
        Mat over = new Mat();
        Calib3d.Rodrigues(new MatOfDouble(tilt * Math.cos(side), tilt * Math.sin(side), 0), over);
        Mat both = new Mat();
        Core.gemm(over, down, 1, new Mat(), 0, both);
        Mat vector = new Mat();
        Calib3d.Rodrigues(both, vector);
        double[] r = new double[3];
        vector.get(0, 0, r);
        return new Vector3(r[0], r[1], r[2]);
    }

    /** What OpenCV makes of them: Zhang's method, two radial terms. */
    private record OpenCv(double focalPx, double k1, double k2, double focalSigmaPx, double k1Sigma, double k2Sigma) {

        static OpenCv calibrate(List<List<ControlPoint>> views, int width, int height, int held) {
            List<Mat> places = new ArrayList<>();
            List<Mat> pixels = new ArrayList<>();
            for (List<ControlPoint> view : views) {
                places.add(new MatOfPoint3f(view.stream()
                        .map(r -> new Point3(r.onGround().x(), r.onGround().y(), 0))
                        .toArray(Point3[]::new)));
                pixels.add(new MatOfPoint2f(view.stream()
                        .map(r -> new org.opencv.core.Point(
                                r.pixel().x(), r.pixel().y()))
                        .toArray(org.opencv.core.Point[]::new)));
            }
            Mat camera = Mat.eye(3, 3, CvType.CV_64F);
            camera.put(0, 0, 0.75 * width);
            camera.put(1, 1, 0.75 * width);
            camera.put(0, 2, (width - 1) / 2.0);
            camera.put(1, 2, (height - 1) / 2.0);
            Mat lens = new Mat();
            Mat sigmas = new Mat();
            Calib3d.calibrateCameraExtended(
                    places,
                    pixels,
                    new Size(width, height),
                    camera,
                    lens,
                    new ArrayList<>(),
                    new ArrayList<>(),
                    sigmas,
                    new Mat(),
                    new Mat(),
                    Calib3d.CALIB_USE_INTRINSIC_GUESS
                            | held
                            | Calib3d.CALIB_FIX_ASPECT_RATIO
                            | Calib3d.CALIB_ZERO_TANGENT_DIST
                            | Calib3d.CALIB_FIX_K3);
            // In the order fx, fy, cx, cy, k1, k2, ...
            return new OpenCv(
                    camera.get(0, 0)[0],
                    lens.get(0, 0)[0],
                    lens.get(0, 1)[0],
                    Math.max(sigmas.get(0, 0)[0], sigmas.get(1, 0)[0]),
                    sigmas.get(4, 0)[0],
                    sigmas.get(5, 0)[0]);
        }
    }
}
