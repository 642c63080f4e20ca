package weltwright.trace;

import java.util.List;
import weltwright.ground.GroundFacts;
import weltwright.ground.GroundSketch;
import weltwright.ground.PaperFinder;
import weltwright.ground.Picture;
import weltwright.ground.RectangleFinder;
import weltwright.ground.Reference;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;

/** A rectangle of known size whose corners were set by hand. Of what lies on it, it tells no more than blank paper. */
record RectangleGround(RectangleFinder.Found found) implements KnownGround {
    @Override
    public List<Reference> references() {
        return found.references();
    }

    @Override
    public double pixelSigma() {
        return found.pixelSigma();
    }

    @Override
    public double stretchSigma() {
        return found.stretchSigma();
    }

    @Override
    public double scaleSigma() {
        return found.scaleSigma();
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
    public GroundFacts facts() {
        return found.facts();
    }

    @Override
    public GroundSketch sketch() {
        return found.sketch();
    }

    @Override
    public Cover cover(Picture picture, View view) {
        return blank().cover(picture, view);
    }

    private PaperGround blank() {
        return new PaperGround(new PaperFinder.Found(found.references(), found.sizeXMm(), found.sizeYMm()), false);
    }
}
