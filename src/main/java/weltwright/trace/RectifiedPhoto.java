package weltwright.trace;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.opencv.core.Mat;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.View;
import weltwright.photo.Photo;

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
            View seenFrom,
            Plane midPlane,
            Placement onSheet,
            Point bottomLeft,
            Point topRight,
            double mmPerPx) {
        GroundRaster raster = GroundRaster.covering(bottomLeft, topRight, mmPerPx);
        try (Picture picture = Picture.decode(photo)) {
            Mat seen = raster.rectified(picture, seenFrom, midPlane, onSheet);
            BufferedImage image = new BufferedImage(raster.columns(), raster.rows(), BufferedImage.TYPE_3BYTE_BGR);
            seen.get(0, 0, ((DataBufferByte) image.getRaster().getDataBuffer()).getData());
            seen.release();
            return new RectifiedPhoto(image, raster.topLeft(), mmPerPx);
        }
    }
}
