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
 * The photo as if taken from straight above, true to size in the knife's mid-plane and turned with the knife: the tip
 * to the right.
 *
 * @param image y down, as images are
 * @param topLeft the silhouette-frame place of the image's upper left corner, in mm, y up
 * @param mmPerPx size of one of its pixels
 */
public record RectifiedPhoto(BufferedImage image, Point topLeft, double mmPerPx) {

    /**
     * The part of the photo round a silhouette.
     *
     * @param bottomLeft lower left corner of the part, in the silhouette's frame, in mm
     * @param topRight its upper right corner
     */
    public static RectifiedPhoto of(
            Photo photo,
            CameraView seenFrom,
            Plane midPlane,
            RigidMotion onSheet,
            Point bottomLeft,
            Point topRight,
            double mmPerPx) {
        PlaneRaster raster = PlaneRaster.covering(bottomLeft, topRight, mmPerPx);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            Mat seen = raster.rectified(picture, seenFrom, midPlane, onSheet);
            BufferedImage image = OpenCvImages.toBufferedImage(seen);
            seen.release();
            return new RectifiedPhoto(image, raster.topLeft(), mmPerPx);
        }
    }
}
