package weltwright.camera.rectification;

import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.image.parallel.RowBands;

/**
 * A raster on a plane: maps its pixels to points of the plane and rectifies pictures. Columns run along x, rows down y.
 *
 * @param topLeft point at the centre of pixel (0, 0), in mm
 * @param mmPerPx size of a pixel
 */
public record PlaneRaster(Point topLeft, double mmPerPx, int columns, int rows) {
    /**
     * Spacing of the columns and rows whose position in the picture is computed; between them it is interpolated
     * linearly, as lens distortion is smooth. Chosen by eye.
     */
    private static final int EXACT_EVERY_PX = 16;

    /** Returns a raster over a rectangle, with an even number of columns and rows so that it can be halved. */
    public static PlaneRaster covering(Point bottomLeft, Point topRight, double mmPerPx) {
        return new PlaneRaster(
                new Point(bottomLeft.x(), topRight.y()),
                mmPerPx,
                2 * (int) Math.ceil((topRight.x() - bottomLeft.x()) / mmPerPx / 2 + 0.5),
                2 * (int) Math.ceil((topRight.y() - bottomLeft.y()) / mmPerPx / 2 + 0.5));
    }

    /**
     * Returns a range of rows.
     *
     * @param from first row
     * @param to row after the last one
     */
    public PlaneRaster rows(int from, int to) {
        return new PlaneRaster(pointAt(0, from), mmPerPx, columns, to - from);
    }

    /** Returns the raster of half the resolution; each of its pixels covers four of this one. */
    public PlaneRaster halved() {
        return new PlaneRaster(pointAt(0.5, 0.5), 2 * mmPerPx, columns / 2, rows / 2);
    }

    /** Returns the point at a column and row, in mm. */
    public Point pointAt(double column, double row) {
        return new Point(topLeft.x() + column * mmPerPx, topLeft.y() - row * mmPerPx);
    }

    /** Returns column and row of a point, with fractions. */
    public Point pixel(Point point) {
        return new Point((point.x() - topLeft.x()) / mmPerPx, (topLeft.y() - point.y()) / mmPerPx);
    }

    /** Whether the nearest pixel lies in the raster. */
    public boolean covers(Point pixel) {
        long column = Math.round(pixel.x());
        long row = Math.round(pixel.y());
        return column >= 0 && row >= 0 && column < columns && row < rows;
    }

    /** Returns the index of the nearest pixel, counted row by row; it must lie in the raster. */
    public int index(Point pixel) {
        return (int) Math.round(pixel.y()) * columns + (int) Math.round(pixel.x());
    }

    /**
     * Rectifies a picture: returns the colour at each pixel of the raster. A picture at least twice as fine as the
     * raster is halved first, so that all of its pixels count.
     *
     * @param plane the plane that the raster lies on
     * @param onGround motion of the raster's frame into the ground frame
     * @return blue, green, red; owned by the caller
     */
    public Mat rectified(DecodedPhoto picture, CameraView view, Plane plane, RigidMotion onGround) {
        if (view.pxPerMm() * mmPerPx >= 2) {
            return rectified(picture.half(), view.halved(), plane, onGround);
        }
        RowBands.Size size = new RowBands.Size(columns, rows, CvType.CV_8UC3);
        return RowBands.of(size, 0, (from, to) -> rows(from, to).remap(picture, view, plane, onGround));
    }

    private Mat remap(DecodedPhoto picture, CameraView view, Plane plane, RigidMotion onGround) {
        Mat[] map = map(view, plane, onGround);
        Mat seen = picture.remap(map[0], map[1], Imgproc.INTER_LINEAR, Core.BORDER_CONSTANT);
        map[0].release();
        map[1].release();
        return seen;
    }

    /** Returns 255 where a pixel of the raster on the ground lies outside the picture, else 0. */
    public Mat outsideMask(DecodedPhoto picture, CameraView view) {
        Mat[] map = map(view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        Mat inside = new Mat();
        Core.inRange(map[0], Scalar.all(0), Scalar.all(picture.widthPx() - 1), inside);
        Mat outside = new Mat();
        Core.inRange(map[1], Scalar.all(0), Scalar.all(picture.heightPx() - 1), outside);
        Core.bitwise_and(inside, outside, outside);
        Core.bitwise_not(outside, outside);
        for (Mat used : List.of(map[0], map[1], inside)) {
            used.release();
        }
        return outside;
    }

    /** Returns the column and row in the picture of each pixel. */
    private Mat[] map(CameraView view, Plane plane, RigidMotion onGround) {
        int coarseColumns = (columns - 1) / EXACT_EVERY_PX + 2;
        int coarseRows = (rows - 1) / EXACT_EVERY_PX + 2;
        float[] xs = new float[coarseColumns * coarseRows];
        float[] ys = new float[xs.length];
        for (int r = 0; r < coarseRows; r++) {
            for (int c = 0; c < coarseColumns; c++) {
                Point at = onGround.apply(pointAt(c * EXACT_EVERY_PX, r * EXACT_EVERY_PX));
                Point px = view.pixel(plane.pointAbove(at));
                xs[r * coarseColumns + c] = (float) px.x();
                ys[r * coarseColumns + c] = (float) px.y();
            }
        }
        return new Mat[] {fine(xs, coarseColumns), fine(ys, coarseColumns)};
    }

    /** Interpolates values at every sixteenth column and row. */
    private Mat fine(float[] coarse, int coarseColumns) {
        Mat fine = new Mat(rows, columns, CvType.CV_32F);
        float[] row = new float[columns];
        float[] line = new float[coarseColumns];
        for (int y = 0; y < rows; y++) {
            int above = y / EXACT_EVERY_PX * coarseColumns;
            float down = (float) (y % EXACT_EVERY_PX) / EXACT_EVERY_PX;
            for (int c = 0; c < coarseColumns; c++) {
                line[c] = between(coarse[above + c], coarse[above + coarseColumns + c], down);
            }
            for (int x = 0; x < columns; x++) {
                int left = x / EXACT_EVERY_PX;
                float across = (float) (x % EXACT_EVERY_PX) / EXACT_EVERY_PX;
                row[x] = between(line[left], line[left + 1], across);
            }
            fine.put(y, 0, row);
        }
        return fine;
    }

    private static float between(float from, float to, float part) {
        return from + (to - from) * part;
    }
}
