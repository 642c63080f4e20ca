package weltwright.image;

import org.opencv.core.Mat;
import weltwright.geometry.Point;

/** Levels of one channel of a picture, from 0 to 255, copied out of OpenCV's memory to be read between its pixels. */
public final class InterpolatedChannel {
    private final int columns;
    private final int rows;
    private final byte[] levels;

    /** @param channel one channel, 8 bits */
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

    public boolean contains(Point p, double marginPx) {
        return p.x() >= marginPx
                && p.y() >= marginPx
                && p.x() <= columns - 1 - marginPx
                && p.y() <= rows - 1 - marginPx;
    }

    /** Bilinear between pixel centres; outside, the nearest pixel of the rim. */
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
     * Means along strips that lie beside each other: the profile across a line or an edge.
     *
     * @param middle the middle of the middle strip
     * @param along of length 1, the strips' direction; the strips follow each other along its {@link Point#left}
     * @param halfLengthPx half a strip's length
     * @param alongStepPx between the samples of a strip
     * @param reach how many strips there are on either side of the middle one
     * @param stepPx between the strips
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
