package weltwright.app.gui.outline;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.model.JobModel;
import weltwright.geometry.Polyline;
import weltwright.trace.outline.UncertainStretch;

/** Leads the eye to one stretch after another at which the trace was not sure, until each has been looked at. */
final class UncertainStretchTour {
    private static final double STEP_MM = 0.25;

    /** What is shown round a stretch. */
    private static final double ROUND_MM = 7;

    private final JobModel bench;
    private Optional<UncertainStretch> present = Optional.empty();
    private boolean leading;

    UncertainStretchTour(JobModel bench) {
        this.bench = bench;
    }

    /** The stretch that the eye was led to; empty where it was led nowhere, or that has been dealt with. */
    Optional<UncertainStretch> present() {
        return present.filter(bench.job().unsure()::contains);
    }

    /** Whether the eye was led there just now, with nothing else begun since. */
    boolean leading() {
        return leading && present().isPresent();
    }

    void pause() {
        leading = false;
    }

    /**
     * On to the next stretch, or back to the one before.
     *
     * @return what to look at, in mm; empty where there is nothing left
     */
    Optional<Rectangle2D> go(int step) {
        List<UncertainStretch> all = bench.job().unsure();
        if (all.isEmpty() || bench.job().silhouette().isEmpty()) {
            return Optional.empty();
        }
        int now = present().map(all::indexOf).orElse(step > 0 ? -1 : 0);
        return Optional.of(lookAt(all.get(Math.floorMod(now + step, all.size()))));
    }

    /** The outline is right at the present stretch: on to the one after it. */
    Optional<Rectangle2D> done() {
        if (present().isEmpty()) {
            return Optional.empty();
        }
        UncertainStretch stretch = present().get();
        int index = bench.job().unsure().indexOf(stretch);
        bench.change(job -> job.withLookedAt(stretch));
        List<UncertainStretch> left = bench.job().unsure();
        return left.isEmpty() ? Optional.empty() : Optional.of(lookAt(left.get(index % left.size())));
    }

    private Rectangle2D lookAt(UncertainStretch stretch) {
        present = Optional.of(stretch);
        leading = true;
        Polyline curve = bench.job().silhouette().orElseThrow().outline().sampled(STEP_MM);
        Rectangle2D box = AnnotationPainter.path(stretch.along(curve)).getBounds2D();
        box.setFrame(
                box.getX() - ROUND_MM,
                box.getY() - ROUND_MM,
                box.getWidth() + 2 * ROUND_MM,
                box.getHeight() + 2 * ROUND_MM);
        return box;
    }
}
