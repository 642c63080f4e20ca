package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.SymmetricSystem;

/**
 * How bright lit paper is over a raster: for each colour channel a smooth surface, of second degree in the logarithm,
 * fitted to the paper's brightness cell by cell, so robustly that a knife and its shadow on a good part of the cells
 * leave no mark on it.
 *
 * <p>Assumes that more of the paper is lit than shaded, and that light falls off gently, as it does everywhere but under
 * a spotlight's rim.
 */
final class PaperLight {
    private static final double CELL_MM = 5;
    private static final int TERMS = 6;

    private PaperLight() {}

    /**
     * @param seen the rectified picture, 8 bits, three channels
     * @param paper 255 where the sheet is plain paper
     * @return the brightness of lit paper at each pixel, float, three channels
     */
    static Mat over(Mat seen, Mat paper, double mmPerPx) {
        int cell = (int) Math.max(4, Math.round(CELL_MM / mmPerPx));
        List<Cell> cells = cells(seen, paper, cell);
        List<Mat> channels = new ArrayList<>();
        for (int channel = 0; channel < 3; channel++) {
            channels.add(surface(fit(cells, channel), seen.cols(), seen.rows()));
        }
        Mat light = new Mat();
        Core.merge(channels, light);
        channels.forEach(Mat::release);
        return light;
    }

    /** Median brightness of a cell's paper; u and v from -1 to 1 over the raster. */
    private record Cell(double u, double v, double[] logLevel) {}

    private static List<Cell> cells(Mat seen, Mat paper, int size) {
        int columns = seen.cols();
        int rows = seen.rows();
        byte[] bgr = new byte[columns * rows * 3];
        byte[] mask = new byte[columns * rows];
        seen.get(0, 0, bgr);
        paper.get(0, 0, mask);
        List<Cell> cells = new ArrayList<>();
        for (int top = 0; top + size <= rows; top += size) {
            for (int left = 0; left + size <= columns; left += size) {
                int[][] histogram = new int[3][256];
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
                if (count > size * size / 5) {
                    double[] log = new double[3];
                    for (int k = 0; k < 3; k++) {
                        log[k] = Math.log(Math.max(1, median(histogram[k], count)));
                    }
                    cells.add(new Cell(2.0 * (left + size / 2.0) / columns - 1, 2.0 * (top + size / 2.0) / rows - 1, log));
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

    private static double[] terms(double u, double v) {
        return new double[] {1, u, v, u * u, u * v, v * v};
    }

    /** Weighted least squares, the weights by Cauchy's function of ever smaller scale. */
    private static double[] fit(List<Cell> cells, int channel) {
        double[] levels = cells.stream().mapToDouble(c -> c.logLevel()[channel]).sorted().toArray();
        double[] surface = new double[TERMS];
        // The upper half of the cells is lit paper even where knife and shadow take a third of the sheet.
        surface[0] = levels[(int) (0.65 * levels.length)];
        for (double scale : new double[] {0.2, 0.1, 0.06, 0.04, 0.03, 0.03, 0.03}) {
            double[][] matrix = new double[TERMS][TERMS];
            double[] right = new double[TERMS];
            for (Cell cell : cells) {
                double[] t = terms(cell.u(), cell.v());
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

    private static Mat surface(double[] surface, int columns, int rows) {
        // A surface of second degree needs no more than a few dozen supports; OpenCV fills in between.
        int coarse = 65;
        float[] values = new float[coarse * coarse];
        for (int r = 0; r < coarse; r++) {
            for (int c = 0; c < coarse; c++) {
                double[] t = terms(2.0 * (c + 0.5) / coarse - 1, 2.0 * (r + 0.5) / coarse - 1);
                values[r * coarse + c] = (float) Math.exp(value(surface, t));
            }
        }
        Mat small = new Mat(coarse, coarse, CvType.CV_32F);
        small.put(0, 0, values);
        Mat full = new Mat();
        Imgproc.resize(small, full, new Size(columns, rows), 0, 0, Imgproc.INTER_LINEAR);
        small.release();
        return full;
    }
}
