package weltwright.ground;

import java.util.List;
import java.util.Random;
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
import org.opencv.core.TermCriteria;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.lens.LensPrior;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * A picture of a flat ground, rendered with OpenCV's camera model, which knows nothing of ours: where each of its
 * points is seen is known exactly.
 *
 * @param focalPx focal length
 * @param k1 radial distortion, as in OpenCV
 * @param tiltDegrees of the camera off the straight view from above
 * @param turnDegrees of the ground in the picture
 * @param distanceMm from the camera to the ground's origin, in the middle of the picture
 * @param blurPx sigma of the blur
 * @param noise sigma of the noise, in grey levels
 */
public record RenderedGround(
        double focalPx,
        double k1,
        double tiltDegrees,
        double turnDegrees,
        double distanceMm,
        double blurPx,
        double noise) {
    public static final int WIDTH_PX = 1200;
    public static final int HEIGHT_PX = 900;

    /** Rendered larger by this, then averaged. */
    private static final int FINER = 2;

    private static final int STEPS_A_PIXEL = 4;

    /** What the ground looks like. */
    public interface Paint {
        /**
         * @param at a place in mm: x right, y up, seen from above
         * @param footprintMm of a sample; finer detail than that must be averaged
         * @return the light from there, from 0 to 255
         */
        double light(Point at, double footprintMm);
    }

    /** How much of a sample lies within {@code halfWidthMm} of something that is {@code distanceMm} off. */
    public static double cover(double distanceMm, double halfWidthMm, double footprintMm) {
        return Math.max(0, Math.min(1, (halfWidthMm - distanceMm) / footprintMm + 0.5));
    }

    /** The photo; {@code gamma} is the exponent of its tone curve: 1 where levels are in proportion to light. */
    public Photo photo(Paint paint, double gamma) {
        OpenCvLibraries.load();
        double footprint = distanceMm / focalPx / FINER;
        Mat fine = new Mat(HEIGHT_PX * FINER, WIDTH_PX * FINER, CvType.CV_32F);
        float[] row = new float[WIDTH_PX * FINER];
        Mat rotation = new Mat();
        Calib3d.Rodrigues(rotation(), rotation);
        double[] r = new double[9];
        rotation.get(0, 0, r);
        double[] eye = new double[3];
        for (int k = 0; k < 3; k++) {
            eye[k] = -r[6 + k] * distanceMm;
        }
        double[] stretch = stretchOfRays();
        for (int y = 0; y < HEIGHT_PX * FINER; y++) {
            double down = (y + 0.5) / FINER - HEIGHT_PX / 2.0;
            for (int x = 0; x < row.length; x++) {
                double right = (x + 0.5) / FINER - WIDTH_PX / 2.0;
                double step = Math.sqrt(right * right + down * down) * STEPS_A_PIXEL;
                int before = (int) step;
                double per = stretch[before] + (step - before) * (stretch[before + 1] - stretch[before]);
                double rayX = right * per;
                double rayY = down * per;
                double[] to = new double[3];
                for (int k = 0; k < 3; k++) {
                    to[k] = r[k] * rayX + r[3 + k] * rayY + r[6 + k];
                }
                double t = -eye[2] / to[2];
                row[x] = (float) paint.light(new Point(eye[0] + t * to[0], eye[1] + t * to[1]), footprint);
            }
            fine.put(y, 0, row);
        }
        Mat picture = new Mat();
        Imgproc.resize(fine, picture, new Size(WIDTH_PX, HEIGHT_PX), 0, 0, Imgproc.INTER_AREA);
        if (blurPx > 0) {
            Imgproc.GaussianBlur(picture, picture, new Size(), blurPx);
        }
        float[] light = new float[WIDTH_PX * HEIGHT_PX];
        picture.get(0, 0, light);
        Random random = new Random(20);
        for (int i = 0; i < light.length; i++) {
            light[i] = (float) (255 * Math.pow(light[i] / 255, 1 / gamma) + noise * random.nextGaussian());
        }
        picture.put(0, 0, light);
        Mat grey = new Mat();
        picture.convertTo(grey, CvType.CV_8U);
        MatOfByte png = new MatOfByte();
        Imgcodecs.imencode(".png", grey, png);
        return Photo.of("rendered.png", png.toArray());
    }

    /**
     * By how much a ray leans for each pixel that it is seen off the middle of the picture, in steps of
     * {@value #STEPS_A_PIXEL} a pixel from there. The distortion is radial, so that OpenCV need not be asked for each
     * pixel; between steps this is straight within 1e-5 px.
     */
    private double[] stretchOfRays() {
        int steps = (int) Math.ceil(Math.hypot(WIDTH_PX, HEIGHT_PX) / 2 * STEPS_A_PIXEL) + 1;
        org.opencv.core.Point[] pixels = new org.opencv.core.Point[steps];
        for (int i = 0; i < steps; i++) {
            pixels[i] = new org.opencv.core.Point(
                    (WIDTH_PX - 1) / 2.0 + (i + 1) / (double) STEPS_A_PIXEL, (HEIGHT_PX - 1) / 2.0);
        }
        MatOfPoint2f rays = new MatOfPoint2f();
        Calib3d.undistortPointsIter(
                new MatOfPoint2f(pixels),
                rays,
                camera(),
                lens(),
                Mat.eye(3, 3, CvType.CV_64F),
                Mat.eye(3, 3, CvType.CV_64F),
                new TermCriteria(TermCriteria.EPS | TermCriteria.MAX_ITER, 40, 1e-9));
        org.opencv.core.Point[] ray = rays.toArray();
        double[] stretch = new double[steps + 1];
        stretch[0] = 1 / focalPx;
        for (int i = 0; i < steps; i++) {
            stretch[i + 1] = ray[i].x * STEPS_A_PIXEL / (i + 1);
        }
        return stretch;
    }

    /** Where places of the ground, in mm, are seen. */
    public List<Point> pixels(List<Point> places) {
        OpenCvLibraries.load();
        MatOfPoint2f pixels = new MatOfPoint2f();
        Calib3d.projectPoints(
                new MatOfPoint3f(
                        places.stream().map(p -> new Point3(p.x(), p.y(), 0)).toArray(Point3[]::new)),
                rotation(),
                new MatOfDouble(0, 0, distanceMm),
                camera(),
                lens(),
                pixels);
        return pixels.toList().stream().map(p -> new Point(p.x, p.y)).toList();
    }

    public boolean shows(Point pixel, double marginPx) {
        return pixel.x() > marginPx
                && pixel.y() > marginPx
                && pixel.x() < WIDTH_PX - 1 - marginPx
                && pixel.y() < HEIGHT_PX - 1 - marginPx;
    }

    public LensPrior looseKnowledgeOfFocalLength() {
        return LensPrior.ofFocal(1.1 * focalPx, 0.3);
    }

    private Mat camera() {
        Mat camera = Mat.eye(3, 3, CvType.CV_64F);
        camera.put(0, 0, focalPx);
        camera.put(1, 1, focalPx);
        camera.put(0, 2, (WIDTH_PX - 1) / 2.0);
        camera.put(1, 2, (HEIGHT_PX - 1) / 2.0);
        return camera;
    }

    private MatOfDouble lens() {
        return new MatOfDouble(k1, 0, 0, 0);
    }

    /** The ground is turned in its plane, then over by half a turn, to face the camera, and on by the tilt. */
    private Mat rotation() {
        Mat turn = new Mat();
        Calib3d.Rodrigues(new MatOfDouble(0, 0, Math.toRadians(turnDegrees)), turn);
        Mat over = new Mat();
        Calib3d.Rodrigues(new MatOfDouble(Math.PI + Math.toRadians(tiltDegrees), 0, 0), over);
        Mat both = new Mat();
        Core.gemm(over, turn, 1, new Mat(), 0, both);
        Mat vector = new Mat();
        Calib3d.Rodrigues(both, vector);
        return vector;
    }
}
