package weltwright.app.gui.outline;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.model.JobModel;
import weltwright.geometry.Polyline;
import weltwright.trace.outline.UncertainStretch;

/** Steps through the stretches at which the trace is uncertain and that the user has not reviewed. */
final class UncertainStretchTour {
    /** Sampling of curves; chosen by eye. */
    private static final double STEP_MM = 0.25;

    /** Margin of the area that shows a stretch; chosen by eye. */
    private static final double MARGIN_MM = 7;

    private final JobModel model;
    private Optional<UncertainStretch> current = Optional.empty();
    private boolean active;

    UncertainStretchTour(JobModel model) {
        this.model = model;
    }

    /** Returns the current stretch; empty before the first step and once the stretch is reviewed. */
    Optional<UncertainStretch> current() {
        return current.filter(model.job().unsure()::contains);
    }

    /** Returns whether the user is at the current stretch, with no other tool selected since. */
    boolean isActive() {
        return active && current().isPresent();
    }

    void pause() {
        active = false;
    }

    /**
     * Moves on by {@code step} stretches.
     *
     * @return the area of the new current stretch, in mm; empty where all are reviewed
     */
    Optional<Rectangle2D> moveBy(int step) {
        List<UncertainStretch> all = model.job().unsure();
        if (all.isEmpty() || model.job().silhouette().isEmpty()) {
            return Optional.empty();
        }
        int now = current().map(all::indexOf).orElse(step > 0 ? -1 : 0);
        return Optional.of(select(all.get(Math.floorMod(now + step, all.size()))));
    }

    /** Moves to a stretch and returns its area; empty where it is reviewed. */
    Optional<Rectangle2D> moveTo(UncertainStretch stretch) {
        return model.job().unsure().contains(stretch)
                        && model.job().silhouette().isPresent()
                ? Optional.of(select(stretch))
                : Optional.empty();
    }

    /** Marks the current stretch as reviewed and moves on to the next; returns as {@link #moveBy} does. */
    Optional<Rectangle2D> acceptCurrent() {
        if (current().isEmpty()) {
            return Optional.empty();
        }
        UncertainStretch stretch = current().get();
        int index = model.job().unsure().indexOf(stretch);
        model.change(job -> job.withReviewed(stretch));
        List<UncertainStretch> left = model.job().unsure();
        return left.isEmpty() ? Optional.empty() : Optional.of(select(left.get(index % left.size())));
    }

    private Rectangle2D select(UncertainStretch stretch) {
        current = Optional.of(stretch);
        active = true;
        Polyline curve = model.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
        Rectangle2D box = AnnotationPainter.path(stretch.along(curve)).getBounds2D();
        box.setFrame(
                box.getX() - MARGIN_MM,
                box.getY() - MARGIN_MM,
                box.getWidth() + 2 * MARGIN_MM,
                box.getHeight() + 2 * MARGIN_MM);
        return box;
    }
}
