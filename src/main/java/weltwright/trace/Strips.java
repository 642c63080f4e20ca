package weltwright.trace;

import java.util.Arrays;
import java.util.List;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.View;

/** Colours of a picture averaged along short lines on the ground, so that grain averages out. */
final class Strips {
    private static final int SAMPLES = 13;

    /** OpenCV's remap takes no more than 32767 rows. */
    private static final int MOST_ROWS = 30_000;

    private final Picture picture;
    private final View view;
    private final double reachMm;

    /** @param reachMm how far a strip goes to both sides of its middle */
    Strips(Picture picture, View view, double reachMm) {
        this.picture = picture;
        this.view = view;
        this.reachMm = reachMm;
    }

    /**
     * @param middle of the strip, on the ground, in mm
     * @param along its direction, of length 1
     */
    record Strip(Point middle, Point along) {}

    /** The mean colour along each strip: blue, green, red; never below 1. */
    float[][] means(List<Strip> strips) {
        float[] xs = new float[strips.size() * SAMPLES];
        float[] ys = new float[xs.length];
        for (int i = 0; i < strips.size(); i++) {
            Strip strip = strips.get(i);
            Point reach = strip.along().times(reachMm);
            // Over two millimetres a lens bends nothing.
            Point from = view.pixel(Plane.GROUND.over(strip.middle().minus(reach)));
            Point to = view.pixel(Plane.GROUND.over(strip.middle().plus(reach)));
            for (int k = 0; k < SAMPLES; k++) {
                Point px = from.towards(to, k / (SAMPLES - 1.0));
                xs[i * SAMPLES + k] = (float) px.x();
                ys[i * SAMPLES + k] = (float) px.y();
            }
        }
        float[][] means = new float[strips.size()][3];
        for (int first = 0; first < strips.size(); first += MOST_ROWS) {
            int rows = Math.min(MOST_ROWS, strips.size() - first);
            int from = first * SAMPLES;
            int to = from + rows * SAMPLES;
            Mat mapX = new Mat(rows, SAMPLES, CvType.CV_32F);
            Mat mapY = new Mat(rows, SAMPLES, CvType.CV_32F);
            mapX.put(0, 0, Arrays.copyOfRange(xs, from, to));
            mapY.put(0, 0, Arrays.copyOfRange(ys, from, to));
            Mat mean = picture.means(mapX, mapY);
            float[] bgr = new float[3 * rows];
            mean.get(0, 0, bgr);
            for (int i = 0; i < rows; i++) {
                for (int k = 0; k < 3; k++) {
                    means[first + i][k] = Math.max(1, bgr[3 * i + k]);
                }
            }
            for (Mat used : List.of(mapX, mapY, mean)) {
                used.release();
            }
        }
        return means;
    }
}
