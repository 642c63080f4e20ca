package weltwright.app.gui.photo;

import java.awt.Graphics2D;
import java.util.Optional;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.model.JobModel;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.Trace;
import weltwright.wording.TraceWording;

/** The lines of what the knife lay on, over the photo as seen from above, to be shown or not. */
public final class GroundLinesLayer {
    private final JobModel bench;
    private Optional<PhotoAssessment.SeenGround> found = Optional.empty();
    private boolean shown;

    public GroundLinesLayer(JobModel bench) {
        this.bench = bench;
    }

    /** Lines in the photo's pixels; empty where none were found. */
    public void find(Optional<PhotoAssessment.SeenGround> lines) {
        found = lines;
    }

    public void show(boolean wanted) {
        shown = wanted;
    }

    public boolean shown() {
        return shown;
    }

    /** Whether there is anything to show. */
    public boolean there() {
        return found.isPresent() && bench.job().trace().isPresent();
    }

    /** Paints it where it is to be shown, on the picture and not beside it. */
    public void paint(Graphics2D g, Viewport at, BackgroundImage under) {
        if (!shown || !there()) {
            return;
        }
        Trace trace = bench.job().trace().orElseThrow();
        PhotoAssessment.SeenGround seen = found.orElseThrow();
        Graphics2D onPhoto = (Graphics2D) g.create();
        onPhoto.clip(at.transform().createTransformedShape(under.extent()));
        GroundPainter.paint(
                onPhoto,
                at,
                seen.lines().stream().map(line -> line.map(trace::under)).toList());
        onPhoto.dispose();
        GroundPainter.title(g, TraceWording.label(seen.label()));
    }
}
