package weltwright.app.gui.outline;

import java.awt.Graphics2D;
import java.util.Optional;
import java.util.function.Consumer;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.photo.BackgroundLayer;
import weltwright.app.gui.photo.GroundLinesLayer;
import weltwright.geometry.Polyline;
import weltwright.job.OutlineAccuracy;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;

/**
 * Paints the layers of the outline's drawing, each at its opacity: photo and ground, outline and marks, dimensions.
 *
 * @param widthPx of the canvas
 * @param heightPx of the canvas
 * @param rulerPx width of its rulers
 */
record OutlineLayers(
        JobModel model,
        BackgroundLayer background,
        GroundLinesLayer ground,
        LayerOpacity opacity,
        UncertainStretchTour tour,
        int widthPx,
        int heightPx,
        int rulerPx) {
    private static final Messages TEXTS = Messages.of(OutlineLayers.class);

    /** Sampling of curves; chosen by eye. */
    private static final double STEP_MM = 0.25;

    /** Less is not worth a word. */
    private static final double LEAST_SHARE = 0.005;

    void paintPhoto(Graphics2D g, Viewport viewport) {
        Graphics2D photo = opacity.on(g, LayerOpacity.Layer.PHOTO);
        background.paint(photo, viewport);
        background.image().ifPresent(image -> ground.paint(photo, viewport, image, rulerPx));
        photo.dispose();
    }

    /** Paints photo and outline for the loupe. */
    void paintMagnified(Graphics2D g, Viewport viewport, Silhouette s) {
        background.image().ifPresent(image -> image.paint(g, viewport));
        painter(g, viewport).paintOutline(s);
    }

    /** Paints the outline with its uncertain stretches, what a tool shows on it, and the legend. */
    void paintLines(Graphics2D g, Viewport viewport, Silhouette s, Consumer<OutlinePainter> tools) {
        Graphics2D lines = opacity.on(g, LayerOpacity.Layer.OUTLINE);
        OutlinePainter painter = painter(lines, viewport);
        if (!model.job().unsure().isEmpty()) {
            Polyline curve = s.outline().sampled(STEP_MM);
            model.job()
                    .unsure()
                    .forEach(u -> painter.paintUncertainStretch(
                            u.along(curve), tour.current().equals(Optional.of(u))));
        }
        painter.paintOutline(s);
        tools.accept(painter);
        painter.paintLegend(rulerPx, accuracyText(model));
        lines.dispose();
    }

    /** Paints the caliper measures, and what a tool measures. */
    void paintDimensions(Graphics2D g, Viewport viewport, Silhouette s, Consumer<OutlinePainter> tools) {
        Graphics2D sizes = opacity.on(g, LayerOpacity.Layer.DIMENSIONS);
        OutlinePainter painter = painter(sizes, viewport);
        model.job().calipers().forEach(caliper -> painter.paintCaliper(caliper, s));
        tools.accept(painter);
        sizes.dispose();
    }

    private OutlinePainter painter(Graphics2D g, Viewport viewport) {
        return new OutlinePainter(g, viewport, widthPx, heightPx, model.unit());
    }

    /** Returns the error of the outline with all that is known, for the user; empty for one that was not traced. */
    static String accuracyText(JobModel model) {
        return OutlineAccuracy.of(model.job())
                .map(accuracy -> TEXTS.text(
                        "outline-layers.95-of-100-places-within",
                        model.unit().format(accuracy.error95Mm(), 2),
                        accuracy.byHand() < LEAST_SHARE
                                ? ""
                                : TEXTS.text("outline-layers.drawn-by-hand", Math.round(100 * accuracy.byHand())),
                        accuracy.contradictionMm() == 0
                                ? ""
                                : TEXTS.text(
                                        "outline-layers.a-caliper-differs-by",
                                        model.unit().format(accuracy.contradictionMm(), 1))))
                .orElse("");
    }
}
