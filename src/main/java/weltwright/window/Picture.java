package weltwright.window;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import weltwright.geometry.Point;
import weltwright.photo.Photo;
import weltwright.trace.RectifiedPhoto;
import weltwright.trace.Trace;

/**
 * What lies under the outline: the photo as seen from straight above, or, before it is traced, as it was taken.
 *
 * @param image y down
 * @param topLeft place of the image's upper left corner in the drawing, in mm
 * @param mmPerPx size of a pixel; without meaning for a photo as taken
 * @param fromAbove whether the outline lies on it where the knife is
 */
record Picture(BufferedImage image, Point topLeft, double mmPerPx, boolean fromAbove) {
    private static final double MARGIN_MM = 18;
    private static final double FINEST_MM_PER_PX = 0.08;
    private static final double GREATEST_PX = 3600;

    /** How wide a photo as taken is drawn, before anyone knows how wide what it shows is. */
    static final double TAKEN_WIDTH_MM = 300;

    /** The photo as seen from straight above, the knife and a little round it. */
    static Picture fromAbove(Photo photo, Trace trace) {
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
        return new Picture(seen.image(), seen.topLeft(), seen.mmPerPx(), true);
    }

    /** The photo as it was taken, upright; empty where Java cannot show its kind of file, such as WebP. */
    static Optional<Picture> asTaken(Photo photo) {
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(photo.bytes()))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return Optional.empty();
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                ImageReadParam coarse = reader.getDefaultReadParam();
                int every = (int) Math.max(1, Math.max(photo.widthPx(), photo.heightPx()) / GREATEST_PX * 2);
                coarse.setSourceSubsampling(every, every, 0, 0);
                BufferedImage upright = upright(reader.read(0, coarse), photo.orientation());
                double mmPerPx = TAKEN_WIDTH_MM / upright.getWidth();
                return Optional.of(new Picture(upright, new Point(0, upright.getHeight() * mmPerPx), mmPerPx, false));
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            // Java's readers throw all sorts of things at a damaged file; what is wrong with it, the tracing says.
            return Optional.empty();
        }
    }

    Rectangle2D extent() {
        double height = image.getHeight() * mmPerPx;
        return new Rectangle2D.Double(topLeft.x(), topLeft.y() - height, image.getWidth() * mmPerPx, height);
    }

    void paint(Graphics2D g, Viewport at) {
        Point corner = at.toPx(topLeft);
        double scale = mmPerPx * at.pxPerMm();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(image, new AffineTransform(scale, 0, 0, scale, corner.x(), corner.y()), null);
    }

    /**
     * @param orientation as in Exif 2.32, tag 274: 2 mirrored left to right, 3 turned by half, 4 mirrored top to
     *     bottom, 5 transposed, 6 to be turned right, 7 transposed about the other diagonal, 8 to be turned left
     */
    private static BufferedImage upright(BufferedImage stored, int orientation) {
        int w = stored.getWidth();
        int h = stored.getHeight();
        boolean lying = orientation >= 5;
        AffineTransform motion =
                switch (orientation) {
                    case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
                    case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
                    case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
                    case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
                    case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
                    case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
                    case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
                    default -> new AffineTransform();
                };
        BufferedImage upright = new BufferedImage(lying ? h : w, lying ? w : h, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = upright.createGraphics();
        g.drawImage(stored, motion, null);
        g.dispose();
        return upright;
    }
}
