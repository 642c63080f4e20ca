package weltwright.app.gui.paper;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.output.pdf.PdfPages;

/**
 * A small image of a page, and where there is ink on the page.
 *
 * @param image 1 px per mm
 * @param size of the page
 * @param inkMm the smallest rectangle round all ink, from the page's upper left corner, y down; to half a mm
 */
record PageThumbnail(BufferedImage image, PdfPages.PageSize size, Rectangle2D inkMm) {
    /** The resolution at which ink is looked for: to half a mm. */
    private static final double INK_PX_PER_MM = 2;

    /** Lighter than this is paper, of 255. Chosen by eye: the lightest grey that is printed is 208. */
    private static final int PAPER_LEVEL = 240;

    static List<PageThumbnail> of(PdfPages pages) {
        return IntStream.range(0, pages.count())
                .mapToObj(page -> of(pages, page))
                .toList();
    }

    private static PageThumbnail of(PdfPages pages, int page) {
        BufferedImage fine = pages.image(page, INK_PX_PER_MM);
        BufferedImage small =
                new BufferedImage((fine.getWidth() + 1) / 2, (fine.getHeight() + 1) / 2, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = small.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(fine, 0, 0, small.getWidth(), small.getHeight(), null);
        g.dispose();
        return new PageThumbnail(small, pages.sizes().get(page), inkMm(fine));
    }

    private static Rectangle2D inkMm(BufferedImage image) {
        int left = image.getWidth();
        int right = -1;
        int top = image.getHeight();
        int bottom = -1;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                int darkest = Math.min(Math.min(rgb >> 16 & 0xff, rgb >> 8 & 0xff), rgb & 0xff);
                if (darkest < PAPER_LEVEL) {
                    left = Math.min(left, x);
                    right = Math.max(right, x);
                    top = Math.min(top, y);
                    bottom = Math.max(bottom, y);
                }
            }
        }
        return right < 0
                ? new Rectangle2D.Double()
                : new Rectangle2D.Double(
                        left / INK_PX_PER_MM,
                        top / INK_PX_PER_MM,
                        (right + 1 - left) / INK_PX_PER_MM,
                        (bottom + 1 - top) / INK_PX_PER_MM);
    }
}
