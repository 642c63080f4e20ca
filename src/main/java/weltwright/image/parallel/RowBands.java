package weltwright.image.parallel;

import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Mat;
import weltwright.camera.rectification.PlaneRaster;

/**
 * A raster worked out in bands of rows, several at the same time: what a step makes for the next one is small enough to
 * stay in a processor's cache, and the memory for it is used again.
 */
public final class RowBands {
    /** A multiple of what {@link PlaneRaster} computes exactly, so that bands meet where it does. */
    private static final int ROWS = 96;

    private RowBands() {}

    /** The values of some rows. */
    public interface Rows {
        /**
         * Makes the rows of one band.
         *
         * @param from the first row
         * @param to the row after the last one
         */
        Mat made(int from, int to);
    }

    /**
     * Makes a raster in bands of rows, several at once.
     *
     * @param size columns and rows, and the type of its values
     * @param marginRows what lies so far from a row has a say in it; not beyond the raster
     */
    public static Mat of(Size size, int marginRows, Rows rows) {
        if (size.rows() <= 2 * ROWS) {
            return rows.made(0, size.rows());
        }
        Mat whole = new Mat(size.rows(), size.columns(), size.type());
        IntStream.range(0, (size.rows() + ROWS - 1) / ROWS).parallel().forEach(band -> {
            int from = band * ROWS;
            int to = Math.min(size.rows(), from + ROWS);
            int low = Math.max(0, from - marginRows);
            Mat made = rows.made(low, Math.min(size.rows(), to + marginRows));
            Mat own = made.rowRange(from - low, to - low);
            Mat place = whole.rowRange(from, to);
            own.copyTo(place);
            for (Mat used : List.of(made, own, place)) {
                used.release();
            }
        });
        return whole;
    }

    /**
     * Size and type of a raster.
     *
     * @param type as OpenCV numbers them
     */
    public record Size(int columns, int rows, int type) {}
}
