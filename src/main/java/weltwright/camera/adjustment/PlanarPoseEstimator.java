package weltwright.camera.adjustment;

import java.util.List;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfDouble;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.MatOfPoint3f;
import org.opencv.core.Point3;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Vector3;
import weltwright.image.opencv.OpenCvPoints;

/**
 * Estimates the pose of a plane from points on it, for a camera without distortion, by OpenCV's IPPE (Collins and
 * Bartoli 2014).
 */
final class PlanarPoseEstimator {
    private PlanarPoseEstimator() {}

    /** Estimates the pose from at least four points, whose edges are ignored. */
    static CameraView of(List<ControlPoint> references, PinholeCamera camera) {
        MatOfPoint3f places = new MatOfPoint3f(references.stream()
                .map(r -> new Point3(r.onGround().x(), r.onGround().y(), 0))
                .toArray(Point3[]::new));
        MatOfPoint2f pixels =
                OpenCvPoints.exact(references.stream().map(ControlPoint::pixel).toList());
        Mat matrix = Mat.eye(3, 3, CvType.CV_64F);
        matrix.put(0, 0, camera.focalPx());
        matrix.put(1, 1, camera.focalPx());
        matrix.put(0, 2, camera.centreXPx());
        matrix.put(1, 2, camera.centreYPx());
        MatOfDouble noDistortion = new MatOfDouble();
        Mat rotation = new Mat();
        Mat translation = new Mat();
        // EPnP sometimes fails on planes; IPPE is made for them.
        Calib3d.solvePnP(places, pixels, matrix, noDistortion, rotation, translation, false, Calib3d.SOLVEPNP_IPPE);
        CameraView view = new CameraView(camera, vector(rotation), vector(translation));
        for (Mat used : List.of(places, pixels, matrix, noDistortion, rotation, translation)) {
            used.release();
        }
        return view;
    }

    private static Vector3 vector(Mat column) {
        return new Vector3(column.get(0, 0)[0], column.get(1, 0)[0], column.get(2, 0)[0]);
    }
}
