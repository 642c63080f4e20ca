package weltwright.trace;

import java.util.Arrays;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.SymmetricSystem;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.View;
import weltwright.knife.Sides;

/**
 * Where along a knife its handle is seen to end: the place at which its colour changes most, right across, between what
 * lies behind and what lies before.
 */
final class HandleFront {
    private static final double MM_PER_PX = 0.25;

    /** Colours are compared over this much on either side; longer than a pin is wide. */
    private static final double COMPARED_MM = 9;

    /** Variance of a column's colour that is always there, in grey levels squared. */
    private static final double NOISE = 6;

    /** Blades are not shorter than this part of a knife, nor handles. */
    private static final double LEAST_PART = 0.2;

    private HandleFront() {}

    /**
     * @param outline along its axis: x towards the tip
     * @param axis the motion from that frame to the ground frame
     * @return x in the outline's frame, as seen on the mid-plane
     */
    static double find(Picture picture, View view, Plane midPlane, Polyline outline, Placement axis) {
        var xs = outline.points().stream().mapToDouble(Point::x).summaryStatistics();
        var ys = outline.points().stream().mapToDouble(Point::y).summaryStatistics();
        GroundRaster raster = GroundRaster.covering(
                new Point(xs.getMin(), ys.getMin()), new Point(xs.getMax(), ys.getMax()), MM_PER_PX);
        Mat seen = raster.rectified(picture, view, midPlane, axis);
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), 1);
        seen.convertTo(seen, CvType.CV_32F);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        seen.get(0, 0, bgr);
        seen.release();
        return strongestChange(raster, bgr, outline);
    }

    private static double strongestChange(GroundRaster raster, float[] bgr, Polyline outline) {
        double[][] colour = colours(raster, bgr, new Sides(outline));
        int columns = colour.length;
        int window = (int) Math.round(COMPARED_MM / raster.mmPerPx());
        int margin = (int) (LEAST_PART * columns);
        double[][] before = new double[columns][];
        double[][] after = new double[columns][];
        double[][] within = {{NOISE, 0, 0}, {0, NOISE, 0}, {0, 0, NOISE}};
        for (int c = margin; c < columns - margin; c++) {
            before[c] = mean(colour, c - window, c);
            after[c] = mean(colour, c, c + window);
            addSpread(within, colour[c - window / 2], before[c], columns - 2 * margin);
        }
        // What varies all along a knife, such as the brightness of wood, tells little of where its material changes.
        SymmetricSystem usual = new SymmetricSystem(within);
        int best = columns / 2;
        double most = -1;
        for (int c = margin; c < columns - margin; c++) {
            double[] step = new double[3];
            for (int k = 0; k < 3; k++) {
                step[k] = after[c][k] - before[c][k];
            }
            double[] weighed = usual.solve(step);
            double change = step[0] * weighed[0] + step[1] * weighed[1] + step[2] * weighed[2];
            if (change > most) {
                most = change;
                best = c;
            }
        }
        return raster.place(best - 0.5, 0).x();
    }

    /** The colour of the knife's middle at each column: blue, green, red. */
    private static double[][] colours(GroundRaster raster, float[] bgr, Sides sides) {
        double[][] colour = new double[raster.columns()][3];
        for (int c = 0; c < colour.length; c++) {
            double x = raster.place(c, 0).x();
            // The rim of a rounded handle and the bevel of a blade are shaded; the middle shows the material.
            double low = sides.lower(x) + 0.2 * sides.width(x);
            double high = sides.upper(x) - 0.2 * sides.width(x);
            int from = (int) Math.ceil(raster.pixel(new Point(0, high)).y());
            int to = (int) Math.floor(raster.pixel(new Point(0, low)).y());
            for (int k = 0; k < 3; k++) {
                colour[c][k] = from <= to ? median(bgr, colour.length, c, from, to, k) : colour[Math.max(0, c - 1)][k];
            }
        }
        return colour;
    }

    /** Of one channel down a column: pins and glints cover less than half of it. */
    private static float median(float[] bgr, int columns, int column, int from, int to, int channel) {
        float[] values = new float[to - from + 1];
        for (int r = from; r <= to; r++) {
            values[r - from] = bgr[3 * (r * columns + column) + channel];
        }
        Arrays.sort(values);
        return values[values.length / 2];
    }

    private static double[] mean(double[][] colour, int from, int to) {
        double[] mean = new double[3];
        for (int c = from; c < to; c++) {
            for (int k = 0; k < 3; k++) {
                mean[k] += colour[c][k] / (to - from);
            }
        }
        return mean;
    }

    private static void addSpread(double[][] spread, double[] colour, double[] mean, int count) {
        for (int j = 0; j < 3; j++) {
            for (int k = 0; k < 3; k++) {
                spread[j][k] += (colour[j] - mean[j]) * (colour[k] - mean[k]) / count;
            }
        }
    }
}
