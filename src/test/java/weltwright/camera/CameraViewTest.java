package weltwright.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfDouble;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.MatOfPoint3f;
import org.opencv.core.Point3;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import org.opencv.imgproc.Moments;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;

/** Our camera maths against OpenCV's own, and against geometry that needs no camera. */
class CameraViewTest {
    private static final PinholeCamera WIDE = new PinholeCamera(2271.5, 1511.5, 1133.5, 0.02, -0.01);
    private static final CameraView SLANTED =
            new CameraView(WIDE, new Vector3(2.9, 0.2, -0.35), new Vector3(12, -20, 380));

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    /** Source: OpenCV's {@code projectPoints}, a reference implementation of the same model. */
    @Test
    void projectsAsOpenCvDoes() {
        Random random = new Random(7);
        List<Vector3> points = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            points.add(
                    new Vector3(random.nextDouble(-140, 140), random.nextDouble(-110, 110), random.nextDouble(-5, 40)));
        }
        org.opencv.core.Point[] theirs = projected(SLANTED, points);
        for (int i = 0; i < theirs.length; i++) {
            Point ours = SLANTED.pixel(points.get(i));
            // OpenCV hands its points over in single precision: about 1e-4 of a pixel here.
            assertThat(ours.x()).isCloseTo(theirs[i].x, within(2e-3));
            assertThat(ours.y()).isCloseTo(theirs[i].y, within(2e-3));
        }
    }

    /** Source: a ray through the picture of a point meets the point's own plane in that point. */
    @Test
    void meetsAPlaneWhereThePointWas() {
        Plane tilted = new Plane(9.5, new Point(-0.04, 0.02));
        for (double x = -120; x <= 120; x += 30) {
            for (double y = -90; y <= 90; y += 30) {
                Point at = new Point(x, y);
                Point back = SLANTED.intersection(SLANTED.pixel(tilted.pointAbove(at)), tilted);
                assertThat(back.distance(at)).isLessThan(1e-8);
            }
        }
    }

    /** Source: similar triangles. From D above, a thing h up looks larger by D / (D - h). */
    @Test
    void aThingThatFloatsLooksLargerFromAbove() {
        double distance = 350;
        double height = 10;
        CameraView above = new CameraView(
                new PinholeCamera(2000, 1000, 1000, 0, 0), new Vector3(Math.PI, 0, 0), new Vector3(0, 0, distance));
        Point seen = above.intersection(above.pixel(new Vector3(140, 0, height)), Plane.GROUND);
        assertThat(seen.x()).isCloseTo(140 * distance / (distance - height), within(1e-9));
        assertThat(above.parallax(new Vector3(0, 70, 0)).y()).isCloseTo(-70 / distance, within(1e-12));
    }

    /** Source: geometry. A point is put so far above a sloping plane along its normal, and seen from there. */
    @Test
    void parallaxOverASlopingPlaneIsThatOfItsNormal() {
        CameraView above = new CameraView(
                new PinholeCamera(2000, 1000, 1000, 0, 0), new Vector3(Math.PI, 0, 0), new Vector3(0, 0, 350));
        Plane plane = new Plane(9, new Point(-0.07, 0.03));
        Point at = new Point(60, -20);
        Vector3 place = plane.pointAbove(at);
        double height = 0.01;
        Vector3 normal = new Vector3(0.07, -0.03, 1);
        Vector3 higher = place.plus(normal.times(height / normal.norm()));
        Point seen = above.intersection(above.pixel(higher), plane);
        Point expected = at.minus(above.parallax(plane, at).times(height));
        assertThat(seen.distance(expected)).isLessThan(0.02 * height);
    }

    /** Source: OpenCV's {@code Rodrigues}. */
    @Test
    void turnsAsRodriguesSays() {
        Vector3 axis = new Vector3(0.3, -1.1, 2.0);
        Mat matrix = new Mat();
        Mat vector = new Mat(3, 1, CvType.CV_64F);
        vector.put(0, 0, axis.x(), axis.y(), axis.z());
        Calib3d.Rodrigues(vector, matrix);
        Vector3 p = new Vector3(5, 7, -3);
        Vector3 rotated = p.rotated(axis);
        double[] row = new double[9];
        matrix.get(0, 0, row);
        assertThat(rotated.x()).isCloseTo(row[0] * p.x() + row[1] * p.y() + row[2] * p.z(), within(1e-12));
        assertThat(rotated.y()).isCloseTo(row[3] * p.x() + row[4] * p.y() + row[5] * p.z(), within(1e-12));
        assertThat(rotated.z()).isCloseTo(row[6] * p.x() + row[7] * p.y() + row[8] * p.z(), within(1e-12));
    }

    /**
     * A soft spot at a known pixel of an odd-sized picture; its centre of mass (Hu 1962) tells where the halved one has
     * it.
     */
    @Test
    void aHalvedPictureShowsThingsWhereTheHalvedViewSays() {
        Vector3 at = new Vector3(40, -25, 8);
        Point px = SLANTED.pixel(at);
        byte[] levels = new byte[2269 * 3025];
        for (int i = 0; i < levels.length; i++) {
            double off = px.distance(new Point(i % 3025, i / 3025));
            levels[i] = (byte) Math.round(200 * Math.exp(-off * off / 50));
        }
        Mat grey = new Mat(2269, 3025, CvType.CV_8U);
        grey.put(0, 0, levels);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", grey, file);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("spot.png", file.toArray()))) {
            Moments moments = Imgproc.moments(picture.half().grey());
            Point seen = new Point(moments.m10 / moments.m00, moments.m01 / moments.m00);
            assertThat(SLANTED.halved().pixel(at).distance(seen)).isLessThan(0.01);
        }
    }

    private static org.opencv.core.Point[] projected(CameraView view, List<Vector3> points) {
        Mat rotation = new Mat(3, 1, CvType.CV_64F);
        rotation.put(
                0,
                0,
                view.rodrigues().x(),
                view.rodrigues().y(),
                view.rodrigues().z());
        Mat translation = new Mat(3, 1, CvType.CV_64F);
        translation.put(
                0,
                0,
                view.translation().x(),
                view.translation().y(),
                view.translation().z());
        Mat matrix = Mat.eye(3, 3, CvType.CV_64F);
        matrix.put(0, 0, view.camera().focalPx());
        matrix.put(1, 1, view.camera().focalPx());
        matrix.put(0, 2, view.camera().centreXPx());
        matrix.put(1, 2, view.camera().centreYPx());
        MatOfPoint2f out = new MatOfPoint2f();
        Calib3d.projectPoints(
                new MatOfPoint3f(points.stream()
                        .map(p -> new Point3(p.x(), p.y(), p.z()))
                        .toArray(Point3[]::new)),
                rotation,
                translation,
                matrix,
                new MatOfDouble(view.camera().k1(), view.camera().k2(), 0, 0),
                out);
        return out.toArray();
    }
}
