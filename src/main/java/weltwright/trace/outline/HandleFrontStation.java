package weltwright.trace.outline;

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
import weltwright.trace.appearance.ColourStatistics;

/**
 * Finds the approximate end of a knife's handle along its axis: the station that separates the colours behind it best
 * from those before it.
 */
final class HandleFrontStation {
    /** Resolution of the rectified photo: coarse, since the station is approximate; chosen by eye. */
    private static final double MM_PER_PX = 0.25;

    /** Least variance of a column's colour, in grey levels squared; chosen by eye. */
    private static final double NOISE = 6;

    /** Least length of a blade and of a handle, as a part of the knife's; chosen by eye. */
    static final double LEAST_PART = 0.2;

    /** Distance from the limits of the search within which a station is at the limit; chosen by eye. */
    private static final double AT_LIMIT_MM = 3;

    /** Margin at the outline, as a part of the width, that is left out for shading; chosen by eye. */
    private static final double MARGIN = 0.2;

    /** Stands for the colour of a column too narrow to have a pixel within the margins. */
    private static final float[] MISSING = new float[3];

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
        float[][] colour = colours(raster, bgr, new OutlineSides(outline));
        int columns = colour.length;
        ColourStatistics[] behind = cumulated(colour, 1);
        ColourStatistics[] before = cumulated(colour, -1);
        int margin = (int) (LEAST_PART * columns);
        int best = margin;
        double least = Double.POSITIVE_INFINITY;
        for (int c = margin; c < columns - margin; c++) {
            // Minus twice the logarithm of the likelihood, without constants.
            double unlikely = c * logDeterminant(behind[c]) + (columns - c) * logDeterminant(before[c]);
            if (unlikely < least) {
                least = unlikely;
                best = c;
            }
        }
        double fromLimit = Math.min(best - margin, columns - 1 - margin - best) * raster.mmPerPx();
        return new Front(raster.pointAt(best - 0.5, 0).x(), fromLimit < AT_LIMIT_MM);
    }

    /** Returns for each column the colour statistics of the columns before it, or from it on. */
    private static ColourStatistics[] cumulated(float[][] colour, int step) {
        int n = colour.length;
        ColourStatistics[] statistics = new ColourStatistics[n + 1];
        double[] sums = new double[ColourStatistics.SIZE];
        for (int k = 0; k < n; k++) {
            ColourStatistics.add(sums, 0, colour[step > 0 ? k : n - 1 - k], 0);
            statistics[step > 0 ? k + 1 : n - 1 - k] = new ColourStatistics(sums.clone());
        }
        return statistics;
    }

    private static double logDeterminant(ColourStatistics statistics) {
        return Math.log(statistics.determinant(NOISE));
    }

    /** Returns the colour of the knife's middle at each column: blue, green, red. */
    private static float[][] colours(PlaneRaster raster, float[] bgr, OutlineSides sides) {
        float[][] colour = IntStream.range(0, raster.columns())
                .parallel()
                .mapToObj(c -> colour(raster, bgr, sides, c))
                .toArray(float[][]::new);
        for (int c = 1; c < colour.length; c++) {
            colour[c] = colour[c] == MISSING ? colour[c - 1] : colour[c];
        }
        return colour;
    }

    private static float[] colour(PlaneRaster raster, float[] bgr, OutlineSides sides, int column) {
        double x = raster.pointAt(column, 0).x();
        // The sides of a rounded handle and the bevel of a blade are shaded; the middle shows the material.
        double low = sides.lower(x) + MARGIN * sides.width(x);
        double high = sides.upper(x) - MARGIN * sides.width(x);
        int from = (int) Math.ceil(raster.pixel(new Point(0, high)).y());
        int to = (int) Math.floor(raster.pixel(new Point(0, low)).y());
        if (from > to) {
            return MISSING;
        }
        float[] colour = new float[3];
        for (int k = 0; k < 3; k++) {
            colour[k] = median(bgr, raster.columns(), column, from, to, k);
        }
        return colour;
    }

    /** Returns the median of a channel down a column: pins and glints cover less than half of it. */
    private static float median(float[] bgr, int columns, int column, int from, int to, int channel) {
        double[] values = new double[to - from + 1];
        for (int r = from; r <= to; r++) {
            values[r - from] = bgr[3 * (r * columns + column) + channel];
        }
        return (float) OrderStatistic.median(values);
    }
}
