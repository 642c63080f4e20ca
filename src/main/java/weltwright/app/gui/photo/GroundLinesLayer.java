package weltwright.app.gui.photo;

import java.awt.Graphics2D;
import java.util.Optional;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.Trace;
import weltwright.wording.TraceWording;

/** A layer over the rectified photo that shows the lines of the ground which was found in the photo. */
public final class GroundLinesLayer {
    private final JobModel model;
    private Optional<PhotoAssessment.SeenGround> ground = Optional.empty();
    private boolean shown;

    public GroundLinesLayer(JobModel model) {
        this.model = model;
    }

    /** Sets the ground that was found, with its lines in px of the photo; empty where none was found. */
    public void setGround(Optional<PhotoAssessment.SeenGround> newGround) {
        ground = newGround;
    }

    public void setShown(boolean newShown) {
        shown = newShown;
    }

    public boolean isShown() {
        return shown;
    }

    /** Returns whether there are lines to show: a ground was found, and the photo is traced. */
    public boolean isAvailable() {
        return ground.isPresent() && model.job().trace().isPresent();
    }

    /**
     * Paints the lines, clipped to the image, if the layer is shown.
     *
     * @param rulerPx width of the rulers at the upper left
     */
    public void paint(Graphics2D g, Viewport viewport, BackgroundImage background, int rulerPx) {
        if (!shown || !isAvailable()) {
            return;
        }
        Trace trace = model.job().trace().orElseThrow();
        PhotoAssessment.SeenGround seenGround = ground.orElseThrow();
        Graphics2D onPhoto = (Graphics2D) g.create();
        onPhoto.clip(viewport.transform().createTransformedShape(background.extent()));
        GroundPainter.paint(
                onPhoto,
                viewport,
                seenGround.lines().stream()
                        .map(line -> line.map(trace::onMidPlane))
                        .toList());
        onPhoto.dispose();
        GroundPainter.paintTitle(g, rulerPx, TraceWording.label(seenGround.label(), model.unit()));
    }
}
