package weltwright.app.gui.paper;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Optional;
import javax.swing.Timer;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.DerivedValue;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.output.pdf.PdfPages;

/**
 * Shows one page as it will be printed, drawn from the PDF in the background at the resolution that the zoom asks for.
 */
final class PagePreviewCanvas extends DrawingCanvas {
    private static final Messages TEXTS = Messages.of(PagePreviewCanvas.class);

    /** Resolutions at which a page is drawn, so that a little zooming draws nothing anew. */
    private static final double[] PX_PER_MM = {2, 3, 4, 6, 8, 12, 16};

    private static final double MOST_PX = 16e6;
    private static final int ZOOM_PAUSE_MS = 120;
    private static final int SHADOW_PX = 3;
    private static final double PAGE_GAP_MM = 4;

    private final ScreenPreferences screen;
    private final DerivedValue<Input, BufferedImage> imageValue;
    private final Timer zoomTimer;
    private Optional<PdfPages> pages = Optional.empty();
    private int page;
    private double neededPxPerMm = PX_PER_MM[1];
    private Optional<Drawn> drawn = Optional.empty();

    private record Input(PdfPages pages, int page, double pxPerMm) {}

    /** An image and what it is of. */
    private record Drawn(PdfPages pages, int page, BufferedImage image) {}

    PagePreviewCanvas(TaskQueue tasks, ScreenPreferences screen) {
        this.screen = screen;
        setName("page preview");
        getAccessibleContext().setAccessibleName(TEXTS.text("page-preview-canvas.page-as-it-will-be"));
        imageValue = new DerivedValue<>(
                tasks,
                TEXTS.text("page-preview-canvas.drawing-the-page"),
                () -> pages.map(
                        all -> new Input(all, page, resolution(all.sizes().get(page)))),
                input -> input.pages().image(input.page(), input.pxPerMm()),
                this::setImage);
        zoomTimer = new Timer(ZOOM_PAUSE_MS, e -> imageValue.update());
        zoomTimer.setRepeats(false);
    }

    void setPage(Optional<PdfPages> newPages, int newPage) {
        if (newPages.equals(pages) && newPage == page) {
            return;
        }
        boolean sameSize = extent().equals(extent(newPages, newPage));
        pages = newPages;
        page = newPage;
        imageValue.update();
        if (sameSize) {
            repaint();
        } else {
            zoomToFit();
        }
    }

    /** Returns whether the page is drawn, rather than still being drawn. */
    boolean isDrawn() {
        return drawn.isPresent() && isOfPage(drawn.get());
    }

    /**
     * Zooms so that a mm is a mm on the screen, to the page's lower left corner where the page is larger than the view.
     */
    void zoomToActualSize() {
        double pxPerMm = screen.pxPerMm(getGraphicsConfiguration());
        extent().ifPresent(box -> {
            Insets margins = margins();
            double width = Math.max(1, getWidth() - margins.left - margins.right) / pxPerMm;
            double height = Math.max(1, getHeight() - margins.top - margins.bottom) / pxPerMm;
            double left = width >= box.getWidth() ? box.getCenterX() - width / 2 : -PAGE_GAP_MM;
            double bottom = height >= box.getHeight() ? box.getCenterY() - height / 2 : -PAGE_GAP_MM;
            zoomTo(new Rectangle2D.Double(left, bottom, width, height));
        });
    }

    /** As measured on this screen. */
    @Override
    protected double zoomShown() {
        return viewport().pxPerMm() / screen.pxPerMm(getGraphicsConfiguration());
    }

    @Override
    protected Optional<Rectangle2D> extent() {
        return extent(pages, page);
    }

    private static Optional<Rectangle2D> extent(Optional<PdfPages> pages, int page) {
        return pages.map(all -> all.sizes().get(page))
                .map(size -> new Rectangle2D.Double(0, 0, size.widthMm(), size.heightMm()));
    }

    @Override
    protected void paintDrawing(Graphics2D g, Viewport viewport) {
        Optional<Rectangle2D> extent = extent();
        if (extent.isEmpty()) {
            return;
        }
        double needed = viewport.pxPerMm() * g.getTransform().getScaleX();
        if (needed != neededPxPerMm) {
            neededPxPerMm = needed;
            zoomTimer.restart();
        }
        Rectangle2D box = extent.get();
        Point upperLeft = viewport.toPx(new Point(0, box.getHeight()));
        double width = box.getWidth() * viewport.pxPerMm();
        double height = box.getHeight() * viewport.pxPerMm();
        g.setColor(new Color(0, 0, 0, 60));
        g.fill(new Rectangle2D.Double(upperLeft.x() + SHADOW_PX, upperLeft.y() + SHADOW_PX, width, height));
        g.setColor(Color.WHITE);
        g.fill(new Rectangle2D.Double(upperLeft.x(), upperLeft.y(), width, height));
        drawn.filter(this::isOfPage).ifPresent(shown -> {
            g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            g.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
            AffineTransform toPx = AffineTransform.getTranslateInstance(upperLeft.x(), upperLeft.y());
            toPx.scale(width / shown.image().getWidth(), height / shown.image().getHeight());
            g.drawImage(shown.image(), toPx, null);
        });
        g.setColor(ThemeColors.secondaryText());
        g.draw(new Rectangle2D.Double(upperLeft.x(), upperLeft.y(), width, height));
    }

    private boolean isOfPage(Drawn image) {
        return pages.isPresent() && image.pages() == pages.get() && image.page() == page;
    }

    private double resolution(PdfPages.PageSize size) {
        double most = Math.sqrt(MOST_PX / (size.widthMm() * size.heightMm()));
        double enough = Arrays.stream(PX_PER_MM)
                .filter(each -> each >= neededPxPerMm)
                .findFirst()
                .orElse(PX_PER_MM[PX_PER_MM.length - 1]);
        return Math.min(enough, most);
    }

    private void setImage(DerivedValue.State<BufferedImage> state) {
        if (!state.computing() && state.value().isPresent() && pages.isPresent()) {
            drawn = Optional.of(new Drawn(pages.get(), page, state.value().get()));
        }
        repaint();
    }
}
