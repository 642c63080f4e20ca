package weltwright.camera.rectification;

import java.awt.image.BufferedImage;
import org.opencv.core.Mat;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvImages;

/**
 * A photo rectified to the knife's mid-plane: true to size, as seen from above, with the tip to the right.
 *
 * @param image y downwards
 * @param topLeft the image's upper left corner in the silhouette frame, in mm, y upwards
 * @param mmPerPx size of a pixel
 */
public record RectifiedPhoto(BufferedImage image, Point topLeft, double mmPerPx) {

    /**
     * Rectifies the part of a photo around a silhouette.
     *
     * @param view camera and pose
     * @param midPlane the plane of the silhouette
     * @param onSheet motion of the silhouette frame into the ground frame
     * @param bottomLeft lower left corner of the part in the silhouette frame, in mm
     * @param topRight upper right corner
     * @param mmPerPx size of a pixel of the image
     */
    public static RectifiedPhoto of(
            Photo photo,
            CameraView view,
            Plane midPlane,
            RigidMotion onSheet,
            Point bottomLeft,
            Point topRight,
            double mmPerPx) {
        PlaneRaster raster = PlaneRaster.covering(bottomLeft, topRight, mmPerPx);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            Mat rectified = raster.rectified(picture, view, midPlane, onSheet);
            BufferedImage image = OpenCvImages.toBufferedImage(rectified);
            rectified.release();
            return new RectifiedPhoto(image, raster.topLeft(), mmPerPx);
        }
    }
}
