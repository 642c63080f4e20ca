package weltwright.image;

import org.opencv.core.Mat;
import weltwright.geometry.Point;

/**
 * One 8-bit channel of a picture, copied from OpenCV's memory, with values between pixels. Pixel centres are whole
 * numbers.
 */
public final class InterpolatedChannel {
    private final int columns;
    private final int rows;
    private final byte[] levels;

    /**
     * Copies a channel.
     *
     * @param channel one channel of 8 bits
     */
    public InterpolatedChannel(Mat channel) {
        columns = channel.cols();
        rows = channel.rows();
        levels = new byte[columns * rows];
        channel.get(0, 0, levels);
    }

    public int columns() {
        return columns;
    }

    public int rows() {
        return rows;
    }

    /** Whether a point lies in the picture and at least a margin away from its border. */
    public boolean contains(Point p, double marginPx) {
        return p.x() >= marginPx
                && p.y() >= marginPx
                && p.x() <= columns - 1 - marginPx
                && p.y() <= rows - 1 - marginPx;
    }

    /**
     * Returns the level at a point by bilinear interpolation, 0 to 255; outside the picture, that of the nearest border
     * pixel.
     */
    public double at(double x, double y) {
        return inside(Math.max(0, Math.min(columns - 1.001, x)), Math.max(0, Math.min(rows - 1.001, y)));
    }

    private double inside(double x, double y) {
        int left = (int) x;
        int top = (int) y;
        double fx = x - left;
        double fy = y - top;
        int i = top * columns + left;
        int i1 = i + columns;
        double upper = (levels[i] & 255) + fx * ((levels[i + 1] & 255) - (levels[i] & 255));
        double lower = (levels[i1] & 255) + fx * ((levels[i1 + 1] & 255) - (levels[i1] & 255));
        return upper + fy * (lower - upper);
    }

    /**
     * Returns the means along parallel strips, which form the profile across a line or an edge.
     *
     * @param middle centre of the middle strip, in pixels
     * @param along unit direction of the strips; they follow each other in the direction of its {@link Point#left}
     * @param halfLengthPx half the length of a strip
     * @param alongStepPx distance of the samples of a strip
     * @param reach number of strips on either side of the middle one
     * @param stepPx distance of the strips
     */
    public double[] profile(
            Point middle, Point along, double halfLengthPx, double alongStepPx, int reach, double stepPx) {
        int half = (int) Math.round(halfLengthPx / alongStepPx);
        Point across = along.left().times(stepPx);
        Point on = along.times(alongStepPx);
        double[] means = new double[2 * reach + 1];
        boolean inside = contains(middle, half * alongStepPx + reach * stepPx + 1);
        for (int k = -reach; k <= reach; k++) {
            double x = middle.x() + k * across.x() - half * on.x();
            double y = middle.y() + k * across.y() - half * on.y();
            double sum = 0;
            for (int s = 0; s <= 2 * half; s++) {
                double u = x + s * on.x();
                double v = y + s * on.y();
                sum += inside ? inside(u, v) : at(u, v);
            }
            means[k + reach] = sum / (2 * half + 1);
        }
        return means;
    }
}
