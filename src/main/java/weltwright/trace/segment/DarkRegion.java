package weltwright.trace.segment;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Rect;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.PaperIllumination;

/**
 * The bounding box of everything on a blank sheet that is darker than the lit paper, objects and shadows alike, with a
 * margin. An object as bright as paper may reach beyond it; the caller must check whether what it finds goes on there.
 *
 * @param low corner of least x and y, on the ground, in mm
 * @param high opposite corner
 */
public record DarkRegion(Point low, Point high) {
    /** Resolution of the raster: coarse, since only a box is wanted; chosen by eye. */
    private static final double MM_PER_PX = 0.8;

    /** Brightness relative to lit paper below which a pixel is dark; unevenness stays above it; chosen by eye. */
    private static final double DARKER = 0.88;

    /** Narrower dark spots than this are grain; chosen by eye. */
    private static final int SPECK_PX = 3;

    /** Margin of the box; chosen by eye. */
    private static final double MARGIN_MM = 20;

    /**
     * Finds the dark region on a sheet; empty where nothing on it is dark.
     *
     * @param half half the width and height of the sheet, whose middle is the origin
     */
    public static Optional<DarkRegion> of(Point half, DecodedPhoto picture, CameraView view) {
        PlaneRaster raster = PlaneRaster.covering(half.times(-1), half, MM_PER_PX);
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        Mat all = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(255));
        Mat light = PaperIllumination.fit(seen, all, raster).over(raster);
        Mat dark = new Mat();
        Core.multiply(light, Scalar.all(DARKER), light);
        seen.convertTo(seen, CvType.CV_32F);
        Core.compare(seen, light, dark, Core.CMP_LT);
        Mat any = new Mat();
        Mat sum = Mat.ones(1, 3, CvType.CV_32F);
        Core.transform(dark, any, sum);
        Mat speck = Imgproc.getStructuringElement(Imgproc.MORPH_RECT, new Size(SPECK_PX, SPECK_PX));
        Imgproc.morphologyEx(any, any, Imgproc.MORPH_OPEN, speck);
        Rect box = Imgproc.boundingRect(any);
        for (Mat used : List.of(seen, all, light, dark, any, sum, speck)) {
            used.release();
        }
        if (box.width == 0) {
            return Optional.empty();
        }
        Point low = raster.pointAt(box.x, box.y + box.height - 1.0);
        Point high = raster.pointAt(box.x + box.width - 1.0, box.y);
        return Optional.of(new DarkRegion(
                new Point(Math.max(-half.x(), low.x() - MARGIN_MM), Math.max(-half.y(), low.y() - MARGIN_MM)),
                new Point(Math.min(half.x(), high.x() + MARGIN_MM), Math.min(half.y(), high.y() + MARGIN_MM))));
    }
}
