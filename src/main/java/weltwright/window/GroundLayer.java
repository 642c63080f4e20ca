package weltwright.window;

import java.awt.Graphics2D;
import java.util.Optional;
import weltwright.trace.FirstLook;
import weltwright.trace.Trace;
import weltwright.wording.TraceWording;

/** The lines of what the knife lay on, over the photo as seen from above, to be shown or not. */
final class GroundLayer {
    private final Bench bench;
    private Optional<FirstLook.SeenGround> found = Optional.empty();
    private boolean shown;

    GroundLayer(Bench bench) {
        this.bench = bench;
    }

    /** Lines in the photo's pixels; empty where none were found. */
    void find(Optional<FirstLook.SeenGround> lines) {
        found = lines;
    }

    void show(boolean wanted) {
        shown = wanted;
    }

    boolean shown() {
        return shown;
    }

    /** Whether there is anything to show. */
    boolean there() {
        return found.isPresent() && bench.job().trace().isPresent();
    }

    /** Paints it where it is to be shown, on the picture and not beside it. */
    void paint(Graphics2D g, Viewport at, Picture under) {
        if (!shown || !there()) {
            return;
        }
        Trace trace = bench.job().trace().orElseThrow();
        FirstLook.SeenGround seen = found.orElseThrow();
        Graphics2D onPhoto = (Graphics2D) g.create();
        onPhoto.clip(at.transform().createTransformedShape(under.extent()));
        GroundInk.paint(
                onPhoto,
                at,
                seen.lines().stream().map(line -> line.map(trace::under)).toList());
        onPhoto.dispose();
        GroundInk.title(g, TraceWording.label(seen.label()));
    }
}
