package weltwright.trace.outline;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.knife.OutlineSides;

/**
 * Finds the approximate end of a knife's handle along its axis: the station that separates the colours behind it best
 * from those before it.
 */
final class HandleFrontStation {
    /** Resolution of the rectified photo: coarse, since the station is approximate; chosen by eye. */
    private static final double MM_PER_PX = 0.25;

    /** Sums kept for each column: three of channels, nine of products. */
    private static final int SUMS = 12;

    /** Least variance of a column's colour, in grey levels squared; chosen by eye. */
    private static final double NOISE = 6;

    /** Least length of a blade and of a handle, as a part of the knife's; chosen by eye. */
    static final double LEAST_PART = 0.2;

    /** Distance from the limits of the search within which a station is at the limit; chosen by eye. */
    private static final double AT_LIMIT_MM = 3;

    /** Margin at the outline, as a part of the width, that is left out for shading; chosen by eye. */
    private static final double MARGIN = 0.2;

    /** Stands for the colour of a column too narrow to have a pixel within the margins. */
    private static final double[] MISSING = new double[3];

    private HandleFrontStation() {}

    /**
     * A station.
     *
     * @param x in the outline's frame, on the mid-plane
     * @param atLimit whether it lies at a limit of the search, so that the true one may lie beyond it or not exist
     */
    record Front(double x, boolean atLimit) {}

    /**
     * Finds the station.
     *
     * @param outline along its axis: x towards the tip
     * @param axis the motion from that frame to the ground frame
     */
    static Front find(DecodedPhoto picture, CameraView view, Plane midPlane, Polyline outline, RigidMotion axis) {
        var xs = outline.points().stream().mapToDouble(Point::x).summaryStatistics();
        var ys = outline.points().stream().mapToDouble(Point::y).summaryStatistics();
        PlaneRaster raster = PlaneRaster.covering(
                new Point(xs.getMin(), ys.getMin()), new Point(xs.getMax(), ys.getMax()), MM_PER_PX);
        Mat seen = raster.rectified(picture, view, midPlane, axis);
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), 1);
        seen.convertTo(seen, CvType.CV_32F);
        float[] bgr = new float[3 * raster.columns() * raster.rows()];
        seen.get(0, 0, bgr);
        seen.release();
        return mostLikely(raster, bgr, outline);
    }

    /**
     * Returns the station of maximum likelihood, the colours of either part having a normal distribution of their own.
     * The patches of a patterned handle then widen its distribution and are not mistaken for its end.
     */
    private static Front mostLikely(PlaneRaster raster, float[] bgr, Polyline outline) {
        double[][] colour = colours(raster, bgr, new OutlineSides(outline));
        int columns = colour.length;
        double[][] behind = scatters(colour, 1);
        double[][] before = scatters(colour, -1);
        int margin = (int) (LEAST_PART * columns);
        int best = margin;
        double least = Double.POSITIVE_INFINITY;
        for (int c = margin; c < columns - margin; c++) {
            // Minus twice the logarithm of the likelihood, without constants.
            double unlikely = c * logDeterminant(behind[c], c) + (columns - c) * logDeterminant(before[c], columns - c);
            if (unlikely < least) {
                least = unlikely;
                best = c;
            }
        }
        double fromLimit = Math.min(best - margin, columns - 1 - margin - best) * raster.mmPerPx();
        return new Front(raster.pointAt(best - 0.5, 0).x(), fromLimit < AT_LIMIT_MM);
    }

    /** Returns for each column the sums of colours and of products over the columns before it, or from it on. */
    private static double[][] scatters(double[][] colour, int step) {
        int n = colour.length;
        double[][] sums = new double[n + 1][SUMS];
        for (int k = 0; k < n; k++) {
            int c = step > 0 ? k : n - 1 - k;
            double[] last = sums[step > 0 ? k : n - k];
            double[] next = sums[step > 0 ? k + 1 : n - 1 - k];
            double[] bgr = colour[c];
            for (int i = 0; i < 3; i++) {
                next[i] = last[i] + bgr[i];
                for (int j = 0; j < 3; j++) {
                    next[3 + 3 * i + j] = last[3 + 3 * i + j] + bgr[i] * bgr[j];
                }
            }
        }
        return sums;
    }

    private static double logDeterminant(double[] sums, int count) {
        double[][] m = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                m[i][j] = sums[3 + 3 * i + j] / count - sums[i] / count * sums[j] / count + (i == j ? NOISE : 0);
            }
        }
        return Math.log(m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]));
    }

    /** Returns the colour of the knife's middle at each column: blue, green, red. */
    private static double[][] colours(PlaneRaster raster, float[] bgr, OutlineSides sides) {
        double[][] colour = IntStream.range(0, raster.columns())
                .parallel()
                .mapToObj(c -> colour(raster, bgr, sides, c))
                .toArray(double[][]::new);
        for (int c = 1; c < colour.length; c++) {
            colour[c] = colour[c] == MISSING ? colour[c - 1] : colour[c];
        }
        return colour;
    }

    private static double[] colour(PlaneRaster raster, float[] bgr, OutlineSides sides, int column) {
        double x = raster.pointAt(column, 0).x();
        // The sides of a rounded handle and the bevel of a blade are shaded; the middle shows the material.
        double low = sides.lower(x) + MARGIN * sides.width(x);
        double high = sides.upper(x) - MARGIN * sides.width(x);
        int from = (int) Math.ceil(raster.pixel(new Point(0, high)).y());
        int to = (int) Math.floor(raster.pixel(new Point(0, low)).y());
        if (from > to) {
            return MISSING;
        }
        double[] colour = new double[3];
        Arrays.setAll(colour, k -> median(bgr, raster.columns(), column, from, to, k));
        return colour;
    }

    /** Returns the median of a channel down a column: pins and glints cover less than half of it. */
    private static double median(float[] bgr, int columns, int column, int from, int to, int channel) {
        double[] values = new double[to - from + 1];
        for (int r = from; r <= to; r++) {
            values[r - from] = bgr[3 * (r * columns + column) + channel];
        }
        return OrderStatistic.median(values);
    }
}
