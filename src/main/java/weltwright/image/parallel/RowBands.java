package weltwright.image.parallel;

import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Mat;

/**
 * Computes a raster in bands of rows, several at the same time. The intermediate results of a band stay in the
 * processor's cache, and their memory is used again for the next band.
 */
public final class RowBands {
    /**
     * Rows of a band: a multiple of the spacing of the rows that {@code PlaneRaster} computes without interpolation, so
     * that neighbouring bands agree at their border.
     */
    private static final int ROWS = 96;

    private RowBands() {}

    /** Computes some rows of a raster. */
    public interface Rows {
        /**
         * Computes the rows of one band.
         *
         * @param from first row
         * @param to row after the last one
         */
        Mat compute(int from, int to);
    }

    /**
     * Computes a raster.
     *
     * @param size columns, rows and element type
     * @param marginRows number of rows above and below a band that its values depend on
     */
    public static Mat of(Size size, int marginRows, Rows rows) {
        if (size.rows() <= 2 * ROWS) {
            return rows.compute(0, size.rows());
        }
        Mat whole = new Mat(size.rows(), size.columns(), size.type());
        IntStream.range(0, (size.rows() + ROWS - 1) / ROWS).parallel().forEach(i -> {
            int from = i * ROWS;
            int to = Math.min(size.rows(), from + ROWS);
            int low = Math.max(0, from - marginRows);
            Mat band = rows.compute(low, Math.min(size.rows(), to + marginRows));
            Mat inner = band.rowRange(from - low, to - low);
            Mat target = whole.rowRange(from, to);
            inner.copyTo(target);
            for (Mat used : List.of(band, inner, target)) {
                used.release();
            }
        });
        return whole;
    }

    /**
     * Size and element type of a raster.
     *
     * @param type an OpenCV type such as {@code CvType.CV_8UC3}
     */
    public record Size(int columns, int rows, int type) {}
}
