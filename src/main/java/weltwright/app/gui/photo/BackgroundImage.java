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
 * The image behind a drawing: the rectified photo under an outline, or the photo as taken before it is traced.
 *
 * @param image y down
 * @param topLeft upper left corner of the image in the drawing, in mm
 * @param mmPerPx size of a pixel; arbitrary for a photo as taken
 * @param rectified whether the image is the plane of the outline seen from straight above
 */
public record BackgroundImage(BufferedImage image, Point topLeft, double mmPerPx, boolean rectified) {
    /** Around the outline; chosen by eye. */
    private static final double MARGIN_MM = 18;
    /** Finest resolution; chosen by eye. */
    private static final double MIN_MM_PER_PX = 0.08;
    /** Greatest width and height, which bounds the memory to 52 MB; chosen by eye. */
    private static final double MAX_PX = 3600;

    /** Width of a photo as taken in its drawing; arbitrary, since the scale of the photo is not known yet. */
    static final double AS_TAKEN_WIDTH_MM = 300;

    public BackgroundImage {
        image = quickToDraw(image);
    }

    /** Returns the image with its pixels as the screen has them, so that they need not be converted for each frame. */
    private static BufferedImage quickToDraw(BufferedImage image) {
        if (image.getType() == BufferedImage.TYPE_INT_RGB) {
            return image;
        }
        BufferedImage quick = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = quick.createGraphics();
        g.drawImage(image, 0, 0, null);
        g.dispose();
        return quick;
    }

    /** Returns the photo rectified to the mid-plane of the knife, cropped to the outline with a margin. */
    public static BackgroundImage rectified(Photo photo, Trace trace) {
        var box = trace.silhouette().outline().sampled(1).lineString().getEnvelopeInternal();
        box.expandBy(MARGIN_MM);
        double mmPerPx = Math.max(MIN_MM_PER_PX, Math.max(box.getWidth(), box.getHeight()) / MAX_PX);
        RectifiedPhoto rectifiedPhoto = RectifiedPhoto.of(
                photo,
                trace.view(),
                trace.midPlane(),
                trace.onGround(),
                new Point(box.getMinX(), box.getMinY()),
                new Point(box.getMaxX(), box.getMaxY()),
                mmPerPx);
        return new BackgroundImage(rectifiedPhoto.image(), rectifiedPhoto.topLeft(), rectifiedPhoto.mmPerPx(), true);
    }

    /** Returns the upright photo without rectification. */
    public static BackgroundImage asTaken(Photo photo) {
        BufferedImage upright = DecodedPhoto.image(photo, (int) MAX_PX);
        double mmPerPx = AS_TAKEN_WIDTH_MM / upright.getWidth();
        return new BackgroundImage(upright, new Point(0, upright.getHeight() * mmPerPx), mmPerPx, false);
    }

    public Rectangle2D extent() {
        double height = image.getHeight() * mmPerPx;
        return new Rectangle2D.Double(topLeft.x(), topLeft.y() - height, image.getWidth() * mmPerPx, height);
    }

    public void paint(Graphics2D g, Viewport viewport) {
        Point topLeftPx = viewport.toPx(topLeft);
        double scale = mmPerPx * viewport.pxPerMm();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(image, new AffineTransform(scale, 0, 0, scale, topLeftPx.x(), topLeftPx.y()), null);
    }
}
