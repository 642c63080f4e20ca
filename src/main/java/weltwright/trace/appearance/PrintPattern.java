package weltwright.trace.appearance;

import java.util.Arrays;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;

/**
 * The print of a bare ground on a raster: which pixels are plain, which are printed black, and which lie so near to a
 * printed edge or line that their colour is mixed. Closing it releases the masks; {@link #printAt} still works.
 */
public final class PrintPattern implements AutoCloseable {

    private final PlaneRaster raster;
    private final Mat paper;
    private final Mat black;
    private final byte[] prints;

    /**
     * Creates the pattern, which then owns the masks.
     *
     * @param paper 255 where the ground is plain
     * @param black 255 where it is printed black
     * @param prints for each pixel the code of the {@link GroundPrint} there
     */
    public PrintPattern(PlaneRaster raster, Mat paper, Mat black, byte[] prints) {
        this.raster = raster;
        this.paper = paper;
        this.black = black;
        this.prints = prints;
    }

    /** Returns the pattern on a raster of half the resolution, plain or black where more than half is. To be closed. */
    public PrintPattern halved() {
        PlaneRaster half = raster.halved();
        byte[] every = new byte[half.columns() * half.rows()];
        for (int i = 0; i < every.length; i++) {
            every[i] = prints[2 * (i / half.columns()) * raster.columns() + 2 * (i % half.columns())];
        }
        return new PrintPattern(half, halved(paper, half), halved(black, half), every);
    }

    /** Returns the pattern on the rows {@code from} to {@code to} − 1. To be closed before this one. */
    PrintPattern rows(int from, int to) {
        return new PrintPattern(
                raster.rows(from, to),
                paper.rowRange(from, to),
                black.rowRange(from, to),
                Arrays.copyOfRange(prints, from * raster.columns(), to * raster.columns()));
    }

    private static Mat halved(Mat mask, PlaneRaster half) {
        Mat halved = new Mat();
        Imgproc.resize(mask, halved, new Size(half.columns(), half.rows()), 0, 0, Imgproc.INTER_AREA);
        Imgproc.threshold(halved, halved, 127, 255, Imgproc.THRESH_BINARY);
        return halved;
    }

    public PlaneRaster raster() {
        return raster;
    }

    /** Returns what is printed at a point of the ground, or so near it that its blur reaches it. */
    public GroundPrint printAt(Point place) {
        Point px = raster.pixel(place);
        return raster.covers(px) ? GroundPrint.ofCode(prints[raster.index(px)]) : GroundPrint.NONE;
    }

    /** Returns a mask: 255 where the ground is plain, away from the blur of print; 0 elsewhere. */
    public Mat paper() {
        return paper;
    }

    /** Returns a mask: 255 where it is printed black, away from the blur of its edge; 0 elsewhere. */
    public Mat black() {
        return black;
    }

    @Override
    public void close() {
        paper.release();
        black.release();
    }
}
