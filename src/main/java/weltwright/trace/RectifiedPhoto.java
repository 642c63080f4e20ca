package weltwright.trace;

import java.awt.image.BufferedImage;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
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
        throw new UnsupportedOperationException();
    }
}
