package weltwright.trace.appearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.geometry.fit.SymmetricSystem;

/**
 * The brightness of lit paper over a ground: for each colour channel a quadratic surface in the logarithm of the grey
 * level, fitted robustly to the median brightness of square cells, so that a knife and its shadow do not bias it.
 *
 * <p>Assumes that more of the paper is lit than shaded, and that light falls off smoothly. The border of a spotlight
 * violates this.
 */
public final class PaperIllumination {
    /** Side of a cell: large enough for a stable median beside printed lines, small against a knife; chosen by eye. */
    private static final double CELL_MM = 5;

    /** The least part of a cell that must be plain paper; chosen by eye. */
    private static final double MIN_PAPER_PART = 0.2;

    /** Coefficients of a quadratic surface. */
    private static final int TERMS = 6;

    /** Unit of the surface's coordinates: half a page, so that all its terms are of similar size. */
    private static final double UNIT_MM = 100;

    /** Steel in a photo is seldom darker than this grey level; chosen by eye. */
    private static final double STEEL_LEVEL = 80;

    /**
     * Largest range of the channels of something grey, as a part of its brightness, by lamp or white balance; by eye.
     */
    private static final double STEEL_TINT = 0.25;

    /**
     * Quantile of the cells' brightness from which the fit begins. It is lit paper as long as knife and shadow take
     * less than two thirds of the sheet; chosen by eye.
     */
    private static final double LIT_QUANTILE = 0.65;

    /** Scales of the Cauchy weights from round to round, in logarithms of brightness; chosen by eye. */
    private static final double[] SCALES = {0.2, 0.1, 0.06, 0.04, 0.03, 0.03, 0.03};

    private final double[][] surfaces;

    private PaperIllumination(double[][] surfaces) {
        this.surfaces = surfaces;
    }

    /**
     * Fits the illumination to the plain parts of the paper.
     *
     * @param seen the rectified photo, 8 bits, three channels
     * @param paper 255 where the sheet is plain paper, 0 elsewhere
     * @param raster of both
     */
    public static PaperIllumination fit(Mat seen, Mat paper, PlaneRaster raster) {
        List<Cell> cells = cells(seen, paper, raster);
        return new PaperIllumination(new double[][] {fit(cells, 0), fit(cells, 1), fit(cells, 2)});
    }

    /** Returns whether the lit ground is as grey and as bright as steel may be. */
    public boolean isSteelGrey() {
        double[] middle = new double[3];
        for (int k = 0; k < 3; k++) {
            middle[k] = Math.exp(surfaces[k][0]);
        }
        double mean = (middle[0] + middle[1] + middle[2]) / 3;
        double most = Math.max(middle[0], Math.max(middle[1], middle[2]));
        double least = Math.min(middle[0], Math.min(middle[1], middle[2]));
        return mean > STEEL_LEVEL && most - least < STEEL_TINT * mean;
    }

    /** Returns the brightness of lit paper at each pixel of a raster: float, three channels, grey levels. */
    public Mat over(PlaneRaster raster) {
        List<Mat> channels = new ArrayList<>();
        for (double[] surface : surfaces) {
            channels.add(over(raster, surface));
        }
        Mat light = new Mat();
        Core.merge(channels, light);
        channels.forEach(Mat::release);
        return light;
    }

    /** @param logLevel logarithm of the median brightness of the cell's paper: blue, green, red */
    private record Cell(Point at, double[] logLevel) {}

    private static List<Cell> cells(Mat seen, Mat paper, PlaneRaster raster) {
        int size = (int) Math.max(4, Math.round(CELL_MM / raster.mmPerPx()));
        int columns = seen.cols();
        int rows = seen.rows();
        byte[] bgr = new byte[columns * rows * 3];
        byte[] mask = new byte[columns * rows];
        seen.get(0, 0, bgr);
        paper.get(0, 0, mask);
        List<Cell> cells = new ArrayList<>();
        int[][] histogram = new int[3][256];
        for (int top = 0; top + size <= rows; top += size) {
            for (int left = 0; left + size <= columns; left += size) {
                for (int[] channel : histogram) {
                    Arrays.fill(channel, 0);
                }
                int count = 0;
                for (int y = top; y < top + size; y++) {
                    for (int x = left; x < left + size; x++) {
                        int at = y * columns + x;
                        if (mask[at] != 0) {
                            count++;
                            for (int k = 0; k < 3; k++) {
                                histogram[k][bgr[3 * at + k] & 255]++;
                            }
                        }
                    }
                }
                if (count > (int) (size * size * MIN_PAPER_PART)) {
                    double[] log = new double[3];
                    for (int k = 0; k < 3; k++) {
                        log[k] = Math.log(Math.max(1, median(histogram[k], count)));
                    }
                    cells.add(new Cell(raster.pointAt(left + size / 2.0, top + size / 2.0), log));
                }
            }
        }
        return cells;
    }

    private static int median(int[] histogram, int count) {
        int sum = 0;
        for (int level = 0; level < 256; level++) {
            sum += histogram[level];
            if (2 * sum >= count) {
                return level;
            }
        }
        return 255;
    }

    private static double[] terms(Point at) {
        double u = at.x() / UNIT_MM;
        double v = at.y() / UNIT_MM;
        return new double[] {1, u, v, u * u, u * v, v * v};
    }

    /** Fits by iteratively reweighted least squares with Cauchy weights of decreasing scale. */
    private static double[] fit(List<Cell> cells, int channel) {
        double[] levels = cells.stream().mapToDouble(c -> c.logLevel()[channel]).toArray();
        double[] surface = new double[TERMS];
        surface[0] = OrderStatistic.quantile(levels, LIT_QUANTILE);
        for (double scale : SCALES) {
            double[][] matrix = new double[TERMS][TERMS];
            double[] right = new double[TERMS];
            for (Cell cell : cells) {
                double[] t = terms(cell.at());
                double off = (cell.logLevel()[channel] - value(surface, t)) / scale;
                double weight = 1 / (1 + off * off);
                for (int i = 0; i < TERMS; i++) {
                    right[i] += weight * t[i] * cell.logLevel()[channel];
                    for (int j = 0; j < TERMS; j++) {
                        matrix[i][j] += weight * t[i] * t[j];
                    }
                }
            }
            surface = new SymmetricSystem(matrix).solve(right);
        }
        return surface;
    }

    private static double value(double[] surface, double[] terms) {
        double sum = 0;
        for (int i = 0; i < TERMS; i++) {
            sum += surface[i] * terms[i];
        }
        return sum;
    }

    private static Mat over(PlaneRaster raster, double[] surface) {
        // A quadratic surface is as good as linear between 33 supports a side.
        int coarse = 33;
        float[] values = new float[coarse * coarse];
        for (int r = 0; r < coarse; r++) {
            for (int c = 0; c < coarse; c++) {
                Point at = raster.pointAt(
                        (c + 0.5) / coarse * raster.columns() - 0.5, (r + 0.5) / coarse * raster.rows() - 0.5);
                values[r * coarse + c] = (float) Math.exp(value(surface, terms(at)));
            }
        }
        Mat small = new Mat(coarse, coarse, CvType.CV_32F);
        small.put(0, 0, values);
        Mat full = new Mat();
        Imgproc.resize(small, full, new Size(raster.columns(), raster.rows()), 0, 0, Imgproc.INTER_LINEAR);
        small.release();
        return full;
    }
}
