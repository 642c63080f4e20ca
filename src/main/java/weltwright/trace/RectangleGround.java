package weltwright.trace;

import java.util.List;
import weltwright.ground.LocatedGround;
import weltwright.ground.PaperFinder;
import weltwright.ground.Picture;
import weltwright.ground.RectangleFinder;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;

/** A rectangle of known size whose corners were set by hand. Of what lies on it, it tells no more than blank paper. */
record RectangleGround(RectangleFinder.Found found, LocatedGround located) implements KnownGround {
    RectangleGround(RectangleFinder.Found found) {
        this(found, found.located());
    }

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        return List.of(
                found.byEdges()
                        ? new TraceNote.RectangleByEdges(
                                found.sizeXMm(), found.sizeYMm(), solution.used(), solution.pixelSigma())
                        : new TraceNote.RectangleByCorners(
                                found.sizeXMm(),
                                found.sizeYMm(),
                                solution.view().mmPerPx()));
    }

    @Override
    public Cover cover(Picture picture, View view) {
        return blank().cover(picture, view);
    }

    private PaperGround blank() {
        return new PaperGround(new PaperFinder.Found(found.references(), found.sizeXMm(), found.sizeYMm()), false);
    }
}
