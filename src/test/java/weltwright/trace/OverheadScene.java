package weltwright.trace;

import java.util.function.Function;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;

/**
 * A camera straight above the ground, and drawn pictures as it would take them: blurred as by a good lens, or more, and
 * with a sensor's noise. Where everything is in them, is known.
 */
public final class OverheadScene {
    private static final int SIZE_PX = 720;
    private static final double DISTANCE_MM = 400;
    private static final double BLUR_PX = 0.8;
    private static final double NOISE = 3;

    static {
        OpenCvLibraries.load();
    }

    private final int widthPx;
    private final int heightPx;
    private final double blurPx;
    private final CameraView view;

    public OverheadScene(double pxPerMm) {
        this(pxPerMm, SIZE_PX, SIZE_PX, BLUR_PX);
    }

    public OverheadScene(double pxPerMm, int widthPx, int heightPx, double blurPx) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.blurPx = blurPx;
        view = new CameraView(
                new PinholeCamera(pxPerMm * DISTANCE_MM, (widthPx - 1) / 2.0, (heightPx - 1) / 2.0, 0, 0),
                new Vector3(Math.PI, 0, 0),
                new Vector3(0, 0, DISTANCE_MM));
    }

    public CameraView view() {
        return view;
    }

    /** @param bgr blue, green and red of each place of the ground, in grey levels */
    public DecodedPhoto picture(Function<Point, double[]> bgr) {
        float[] colours = new float[3 * widthPx * heightPx];
        for (int i = 0; i < widthPx * heightPx; i++) {
            double[] colour = bgr.apply(view.intersection(new Point(i % widthPx, i / widthPx), Plane.GROUND));
            for (int k = 0; k < 3; k++) {
                colours[3 * i + k] = (float) colour[k];
            }
        }
        Mat drawn = new Mat(heightPx, widthPx, CvType.CV_32FC3);
        drawn.put(0, 0, colours);
        Imgproc.GaussianBlur(drawn, drawn, new Size(0, 0), blurPx);
        Mat noise = new Mat(heightPx, widthPx, CvType.CV_32FC3);
        Core.setRNGSeed(3);
        Core.randn(noise, 0, NOISE);
        Core.add(drawn, noise, drawn);
        drawn.convertTo(drawn, CvType.CV_8U);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, file);
        return DecodedPhoto.decode(Photo.of("drawn.png", file.toArray()));
    }

    public static double[] grey(double level) {
        return new double[] {level, level, level};
    }
}
