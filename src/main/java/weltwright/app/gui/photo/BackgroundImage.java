package weltwright.app.gui.photo;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import weltwright.app.gui.drawing.Viewport;
import weltwright.camera.rectification.RectifiedPhoto;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.trace.Trace;

/**
 * What lies under the outline: the photo as seen from straight above, or, before it is traced, as it was taken.
 *
 * @param image y down
 * @param topLeft place of the image's upper left corner in the drawing, in mm
 * @param mmPerPx size of a pixel; without meaning for a photo as taken
 * @param fromAbove whether the outline lies on it where the knife is
 */
public record BackgroundImage(BufferedImage image, Point topLeft, double mmPerPx, boolean fromAbove) {
    private static final double MARGIN_MM = 18;
    private static final double FINEST_MM_PER_PX = 0.08;
    private static final double GREATEST_PX = 3600;

    /** How wide a photo as taken is drawn, before anyone knows how wide what it shows is. */
    static final double TAKEN_WIDTH_MM = 300;

    /** The photo as seen from straight above, the knife and a little round it. */
    public static BackgroundImage fromAbove(Photo photo, Trace trace) {
        var box = trace.silhouette().outline().sampled(1).lineString().getEnvelopeInternal();
        box.expandBy(MARGIN_MM);
        double mmPerPx = Math.max(FINEST_MM_PER_PX, Math.max(box.getWidth(), box.getHeight()) / GREATEST_PX);
        RectifiedPhoto seen = RectifiedPhoto.of(
                photo,
                trace.seenFrom(),
                trace.midPlane(),
                trace.onSheet(),
                new Point(box.getMinX(), box.getMinY()),
                new Point(box.getMaxX(), box.getMaxY()),
                mmPerPx);
        return new BackgroundImage(seen.image(), seen.topLeft(), seen.mmPerPx(), true);
    }

    /** The photo as it was taken, upright. */
    public static BackgroundImage asTaken(Photo photo) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            BufferedImage upright = picture.image((int) GREATEST_PX);
            double mmPerPx = TAKEN_WIDTH_MM / upright.getWidth();
            return new BackgroundImage(upright, new Point(0, upright.getHeight() * mmPerPx), mmPerPx, false);
        }
    }

    public Rectangle2D extent() {
        double height = image.getHeight() * mmPerPx;
        return new Rectangle2D.Double(topLeft.x(), topLeft.y() - height, image.getWidth() * mmPerPx, height);
    }

    public void paint(Graphics2D g, Viewport at) {
        Point corner = at.toPx(topLeft);
        double scale = mmPerPx * at.pxPerMm();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(image, new AffineTransform(scale, 0, 0, scale, corner.x(), corner.y()), null);
    }
}
