package weltwright.camera.rectification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Scalar;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;

/** A disc drawn at a known pixel: by similar triangles it lies at a known place of the mid-plane. */
class RectifiedPhotoTest {
    private static final double FOCAL_PX = 800;
    private static final double DISTANCE_MM = 400;
    private static final double HEIGHT_MM = 10;
    private static final double CENTRE_PX = 199.5;

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    @Test
    void showsThingsWhereTheyAreInTheMidPlane() {
        Mat drawn = new Mat(400, 400, CvType.CV_8UC3, Scalar.all(0));
        Imgproc.circle(drawn, new org.opencv.core.Point(250, 150), 12, Scalar.all(255), Imgproc.FILLED);
        int discPx = Core.countNonZero(drawn.reshape(1)) / 3;
        MatOfByte png = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, png);
        CameraView above = new CameraView(
                new PinholeCamera(FOCAL_PX, CENTRE_PX, CENTRE_PX, 0, 0),
                new Vector3(Math.PI, 0, 0),
                new Vector3(0, 0, DISTANCE_MM));
        RigidMotion onSheet = new RigidMotion(Math.PI / 2, new Point(5, 3));
        Point onGround = new Point(250 - CENTRE_PX, CENTRE_PX - 150).times((DISTANCE_MM - HEIGHT_MM) / FOCAL_PX);
        Point truth = onSheet.inverse().apply(onGround);

        RectifiedPhoto rectified = RectifiedPhoto.of(
                Photo.of("disc.png", png.toArray()),
                above,
                new Plane(HEIGHT_MM, new Point(0, 0)),
                onSheet,
                truth.minus(new Point(20, 15)),
                truth.plus(new Point(25, 20)),
                0.25);

        Point sum = new Point(0, 0);
        double weight = 0;
        for (int y = 0; y < rectified.image().getHeight(); y++) {
            for (int x = 0; x < rectified.image().getWidth(); x++) {
                int level = rectified.image().getRGB(x, y) & 255;
                sum = sum.plus(new Point(x, y).times(level));
                weight += level;
            }
        }
        Point seen = new Point(sum.x() / weight, -sum.y() / weight)
                .times(rectified.mmPerPx())
                .plus(rectified.topLeft());
        assertThat(seen.distance(truth)).isLessThan(0.05);
        double mmPerPx = (DISTANCE_MM - HEIGHT_MM) / FOCAL_PX;
        double truthMm2 = discPx * mmPerPx * mmPerPx;
        assertThat(weight / 255 * rectified.mmPerPx() * rectified.mmPerPx()).isCloseTo(truthMm2, withinPercentage(1));
    }
}
