package weltwright.trace.outline;

import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.knife.OutlineSides;
import weltwright.trace.appearance.ColourStatistics;

/**
 * How much of the whole step from a handle's colour to its blade's each place of a rectified picture makes, along the
 * knife: 1 where all of it lies within {@link #ARM_MM} to both sides.
 *
 * <p>Which mixture of the channels that is, {@link ColourStatistics.Discriminant} says of the colours a few millimetres
 * behind and before a rough place of the handle's end.
 *
 * @param share for each pixel of the raster, row by row, at its left rim
 * @param apart how far the two colours are apart, in standard deviations within them; 0 where one of them is not to be
 *     seen
 */
record HandleColourProfile(PlaneRaster raster, float[] share, double apart) {
    /** Colours are learned from so far behind and before a place, but for what is right beside it. */
    static final double LEARN_MM = 4;

    private static final double SKIP_MM = 1.2;

    /** A step is the mean over so much before a place less that over so much behind it. */
    private static final double ARM_MM = 0.5;

    /**
     * What is this near to the outline, as a part of the width, is shaded or shows the ground, and is not learned from.
     */
    private static final double RIM = 0.1;

    /**
     * @param bgr the picture as seen through the raster: blue, green, red of each pixel
     * @param sides of the knife's outline
     * @param x roughly where the handle ends
     */
    static HandleColourProfile near(double x, PlaneRaster raster, float[] bgr, OutlineSides sides) {
        double[] handle = new double[ColourStatistics.SIZE];
        double[] blade = new double[ColourStatistics.SIZE];
        for (int c = 0; c < raster.columns(); c++) {
            double u = raster.pointAt(c, 0).x();
            if (Math.abs(u - x) < SKIP_MM || Math.abs(u - x) > LEARN_MM) {
                continue;
            }
            double rim = RIM * sides.width(u);
            int from = (int)
                    Math.ceil(raster.pixel(new Point(0, sides.upper(u) - rim)).y());
            int to = (int)
                    Math.floor(raster.pixel(new Point(0, sides.lower(u) + rim)).y());
            for (int r = Math.max(0, from); r <= Math.min(raster.rows() - 1, to); r++) {
                ColourStatistics.add(u < x ? handle : blade, 0, bgr, 3 * (r * raster.columns() + c));
            }
        }
        float[] share = new float[raster.columns() * raster.rows()];
        if (handle[0] == 0 || blade[0] == 0) {
            return new HandleColourProfile(raster, share, 0);
        }
        ColourStatistics.Discriminant parts = new ColourStatistics(blade).against(new ColourStatistics(handle));
        fill(share, raster, bgr, parts);
        return new HandleColourProfile(raster, share, Math.sqrt(parts.square()));
    }

    private static void fill(float[] share, PlaneRaster raster, float[] bgr, ColourStatistics.Discriminant parts) {
        int columns = raster.columns();
        int arm = (int) Math.round(ARM_MM / raster.mmPerPx());
        double[] weights = parts.weights();
        double[] sum = new double[columns + 1];
        for (int r = 0; r < raster.rows(); r++) {
            for (int c = 0; c < columns; c++) {
                int i = 3 * (r * columns + c);
                sum[c + 1] = sum[c] + weights[0] * bgr[i] + weights[1] * bgr[i + 1] + weights[2] * bgr[i + 2];
            }
            for (int c = arm; c < columns - arm; c++) {
                double step = (2 * sum[c] - sum[c - arm] - sum[c + arm]) / arm;
                share[r * columns + c] = (float) (step / parts.square());
            }
        }
    }

    /** The share of the step at a place; 0 outside of the picture. */
    double at(Point place) {
        Point px = raster.pixel(place);
        int row = (int) Math.round(px.y());
        double column = px.x() + 0.5;
        int left = (int) Math.floor(column);
        if (row < 0 || row >= raster.rows() || left < 0 || left + 1 >= raster.columns()) {
            return 0;
        }
        int i = row * raster.columns() + left;
        return share[i] + (column - left) * (share[i + 1] - share[i]);
    }

    /**
     * How far before a place the steepest one near it lies; not a number where none is steep.
     *
     * @param nearMm how far to look to either side
     * @param least share of the step that is steep
     */
    double steepest(Point place, double nearMm, double least) {
        double most = least;
        double at = Double.NaN;
        for (double off = -nearMm; off <= nearMm; off += raster.mmPerPx() / 2) {
            double share = at(place.plus(new Point(off, 0)));
            if (share > most) {
                most = share;
                at = off;
            }
        }
        return at;
    }
}
