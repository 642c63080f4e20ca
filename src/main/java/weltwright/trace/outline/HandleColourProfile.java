package weltwright.trace.outline;

import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.knife.OutlineSides;
import weltwright.trace.appearance.ColourStatistics;

/**
 * A map of the change from a handle's colour to its blade's along the knife: at each pixel of a rectified photo the
 * share of the whole step that lies within {@link #ARM_MM} to both sides, 1 where all of it does.
 *
 * <p>The step is measured in the mixture of channels that separates the colours a few millimetres behind and before the
 * approximate end of the handle best ({@link ColourStatistics.Discriminant}).
 *
 * @param share for each pixel of the raster, row by row, at its left border
 * @param separation distance of the two colours in standard deviations within them; 0 where one of them is missing
 */
record HandleColourProfile(PlaneRaster raster, float[] share, double separation) {
    /** Distance from the handle's end up to which the colours are sampled; chosen by eye. */
    static final double SAMPLED_MM = 4;

    /** Distance from which they are sampled, for the error of the approximate end; chosen by eye. */
    private static final double SKIPPED_MM = 1.2;

    /** Length of the means before and behind a pixel whose difference is the step; chosen by eye. */
    private static final double ARM_MM = 0.5;

    /** Margin at the outline, as a part of the width, that is shaded or shows the ground; chosen by eye. */
    private static final double MARGIN = 0.1;

    /**
     * Computes the map near an approximate end of the handle.
     *
     * @param handleX approximate end of the handle's colours
     * @param bladeX approximate beginning of the blade's, beyond a face of the front that is visible
     * @param bgr the rectified photo on the raster: blue, green, red of each pixel
     * @param sides of the knife's outline
     */
    static HandleColourProfile near(
            double handleX, double bladeX, PlaneRaster raster, float[] bgr, OutlineSides sides) {
        double[] handle = new double[ColourStatistics.SIZE];
        double[] blade = new double[ColourStatistics.SIZE];
        for (int c = 0; c < raster.columns(); c++) {
            double u = raster.pointAt(c, 0).x();
            boolean isHandle = u > handleX - SAMPLED_MM && u < handleX - SKIPPED_MM;
            if (!isHandle && !(u > bladeX + SKIPPED_MM && u < bladeX + SAMPLED_MM)) {
                continue;
            }
            double margin = MARGIN * sides.width(u);
            int from = (int) Math.ceil(
                    raster.pixel(new Point(0, sides.upper(u) - margin)).y());
            int to = (int) Math.floor(
                    raster.pixel(new Point(0, sides.lower(u) + margin)).y());
            for (int r = Math.max(0, from); r <= Math.min(raster.rows() - 1, to); r++) {
                ColourStatistics.add(isHandle ? handle : blade, 0, bgr, 3 * (r * raster.columns() + c));
            }
        }
        float[] share = new float[raster.columns() * raster.rows()];
        if (handle[0] == 0 || blade[0] == 0) {
            return new HandleColourProfile(raster, share, 0);
        }
        ColourStatistics.Discriminant discriminant = new ColourStatistics(blade).against(new ColourStatistics(handle));
        fill(share, raster, bgr, discriminant);
        return new HandleColourProfile(raster, share, Math.sqrt(discriminant.square()));
    }

    private static void fill(
            float[] share, PlaneRaster raster, float[] bgr, ColourStatistics.Discriminant discriminant) {
        int columns = raster.columns();
        int arm = (int) Math.round(ARM_MM / raster.mmPerPx());
        double[] weights = discriminant.weights();
        double[] sum = new double[columns + 1];
        for (int r = 0; r < raster.rows(); r++) {
            for (int c = 0; c < columns; c++) {
                int i = 3 * (r * columns + c);
                sum[c + 1] = sum[c] + weights[0] * bgr[i] + weights[1] * bgr[i + 1] + weights[2] * bgr[i + 2];
            }
            for (int c = arm; c < columns - arm; c++) {
                double step = (2 * sum[c] - sum[c - arm] - sum[c + arm]) / arm;
                share[r * columns + c] = (float) (step / discriminant.square());
            }
        }
    }

    /** Returns the share of the step at a place, interpolated along x; 0 outside of the raster. */
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
     * Returns the offset along x from a place to the greatest share near it; NaN where none exceeds the least.
     *
     * @param nearMm greatest offset to either side
     * @param least share that is considered
     * @param sign −1 for the greatest change the other way, else 1
     */
    double steepest(Point place, double nearMm, double least, int sign) {
        double most = least;
        double at = Double.NaN;
        for (double off = -nearMm; off <= nearMm; off += raster.mmPerPx() / 2) {
            double share = sign * at(place.plus(new Point(off, 0)));
            if (share > most) {
                most = share;
                at = off;
            }
        }
        return at;
    }
}
