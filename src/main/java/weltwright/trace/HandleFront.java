package weltwright.trace;

import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
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
        Sides sides = new Sides(outline);
        int columns = raster.columns();
        double[][] sums = new double[columns + 1][7];
        for (int c = 0; c < columns; c++) {
            double[] at = sums[c + 1];
            System.arraycopy(sums[c], 0, at, 0, 7);
            double x = raster.place(c, 0).x();
            // The rim of a rounded handle and the bevel of a blade are shaded; the middle shows the material.
            double low = sides.lower(x) + 0.2 * sides.width(x);
            double high = sides.upper(x) - 0.2 * sides.width(x);
            int from = (int) Math.ceil(raster.pixel(new Point(0, high)).y());
            int to = (int) Math.floor(raster.pixel(new Point(0, low)).y());
            double[] column = new double[3];
            for (int r = from; r <= to; r++) {
                for (int k = 0; k < 3; k++) {
                    column[k] += bgr[3 * (r * columns + c) + k];
                }
            }
            int count = to - from + 1;
            if (count > 0) {
                at[0]++;
                for (int k = 0; k < 3; k++) {
                    double mean = column[k] / count;
                    at[1 + k] += mean;
                    at[4 + k] += mean * mean;
                }
            }
        }
        int window = (int) Math.round(COMPARED_MM / raster.mmPerPx());
        int margin = (int) (LEAST_PART * columns);
        int best = columns / 2;
        double most = -1;
        for (int c = margin; c < columns - margin; c++) {
            double change = change(sums, c - window, c, c + window);
            if (change > most) {
                most = change;
                best = c;
            }
        }
        return raster.place(best - 0.5, 0).x();
    }

    /** The squared difference of the mean colours before and after a column over how much the columns vary in each. */
    private static double change(double[][] sums, int from, int middle, int to) {
        double difference = 0;
        double within = 0;
        for (int k = 0; k < 3; k++) {
            double before = mean(sums, from, middle, 1 + k);
            double after = mean(sums, middle, to, 1 + k);
            difference += (after - before) * (after - before);
            within += mean(sums, from, middle, 4 + k) - before * before + mean(sums, middle, to, 4 + k) - after * after;
        }
        return difference / (within + 40);
    }

    private static double mean(double[][] sums, int from, int to, int k) {
        int a = Math.max(0, from);
        int b = Math.min(sums.length - 1, to);
        return (sums[b][k] - sums[a][k]) / Math.max(1, sums[b][0] - sums[a][0]);
    }
}
