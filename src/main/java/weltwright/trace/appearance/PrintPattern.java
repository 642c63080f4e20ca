package weltwright.trace.appearance;

import java.util.Arrays;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;

/**
 * What a bare ground would look like on a raster: which pixels are plain, which are printed black, and which lie so
 * near to a printed edge or line that their colour is not to be relied on. Its masks are gone once it is closed; what
 * is printed where it still tells.
 */
public final class PrintPattern implements AutoCloseable {

    private final PlaneRaster raster;
    private final Mat paper;
    private final Mat black;
    private final byte[] prints;

    /**
     * @param paper 255 where the ground is plain
     * @param black 255 where it is printed black
     * @param prints for each pixel the ordinal of the {@link GroundPrint} there
     */
    public PrintPattern(PlaneRaster raster, Mat paper, Mat black, byte[] prints) {
        this.raster = raster;
        this.paper = paper;
        this.black = black;
        this.prints = prints;
    }

    /** The same on a raster half as fine; plain or black where that is more than what is spoilt. To be closed. */
    public PrintPattern halved() {
        PlaneRaster half = raster.halved();
        byte[] every = new byte[half.columns() * half.rows()];
        for (int i = 0; i < every.length; i++) {
            every[i] = prints[2 * (i / half.columns()) * raster.columns() + 2 * (i % half.columns())];
        }
        return new PrintPattern(half, halved(paper, half), halved(black, half), every);
    }

    /** The same on some of the raster's rows, up to the one before the last given. To be closed, before this one is. */
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

    /** What is printed at a place of the ground, or so near it that it shows there. */
    public GroundPrint printAt(Point place) {
        Point px = raster.pixel(place);
        return raster.covers(px) ? GroundPrint.ofCode(prints[raster.index(px)]) : GroundPrint.NONE;
    }

    /** 255 where the ground is plain, well away from print; 0 elsewhere. */
    public Mat paper() {
        return paper;
    }

    /** 255 where it is printed black, well away from its edge; 0 elsewhere. */
    public Mat black() {
        return black;
    }

    @Override
    public void close() {
        paper.release();
        black.release();
    }
}
