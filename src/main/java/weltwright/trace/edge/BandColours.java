package weltwright.trace.edge;

import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;

/**
 * The colours of a photo along a band, for averaging along and across it. In a closed band averages run on from the
 * last row to the first.
 */
final class BandColours implements AutoCloseable {
    /**
     * Standard deviation of the average across the edge, in pixels: about that of the blur of a sharp photo; chosen by
     * eye.
     */
    private static final double ACROSS_SIGMA_PX = 1.0;

    /**
     * Rows that an average needs to either side, in standard deviations: beyond lies 0.3 % of a normal distribution.
     */
    private static final double REACH_SIGMAS = 3;

    private final EdgeBand band;
    private final int wrap;
    private final Mat seen;

    /** @param mostRows the greatest standard deviation, in rows, of the averages to be taken */
    BandColours(DecodedPhoto picture, EdgeBand band, double mostRows) {
        this.band = band;
        wrap = (int) Math.ceil(REACH_SIGMAS * mostRows);
        seen = seen(picture);
    }

    /** Returns the colours of the band's rows, and of as many more at either end as an average needs. */
    private Mat seen(DecodedPhoto picture) {
        int rows = band.rows() + 2 * wrap;
        int width = band.width();
        Mat mapX = new Mat(rows, width, CvType.CV_32F);
        Mat mapY = new Mat(rows, width, CvType.CV_32F);
        float[] xs = new float[width];
        float[] ys = new float[width];
        for (int r = 0; r < rows; r++) {
            int i = band.row(r - wrap);
            Point innermost = band.innermost(i);
            Point step = band.step(i);
            for (int k = 0; k < width; k++) {
                xs[k] = (float) (innermost.x() + k * step.x());
                ys[k] = (float) (innermost.y() + k * step.y());
            }
            mapX.put(r, 0, xs);
            mapY.put(r, 0, ys);
        }
        Mat colours = picture.remap(mapX, mapY, Imgproc.INTER_CUBIC, Core.BORDER_REPLICATE);
        colours.convertTo(colours, CvType.CV_32F);
        mapX.release();
        mapY.release();
        return colours;
    }

    /**
     * Averages with Gaussian weights.
     *
     * @param alongRows standard deviation along the band, in rows
     * @return for each sample, row by row: blue, green, red, in grey levels
     */
    float[] averaged(double alongRows) {
        Mat averaged = new Mat();
        Imgproc.GaussianBlur(seen, averaged, new Size(0, 0), ACROSS_SIGMA_PX * band.samplesPerPx(), alongRows);
        float[] values = values(averaged);
        averaged.release();
        return values;
    }

    private float[] values(Mat colours) {
        Mat inner = colours.rowRange(wrap, wrap + band.rows());
        float[] values = new float[band.rows() * band.width() * 3];
        inner.get(0, 0, values);
        inner.release();
        return values;
    }

    @Override
    public void close() {
        seen.release();
    }
}
