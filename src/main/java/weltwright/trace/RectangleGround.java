package weltwright.trace;

import java.util.List;
import java.util.Locale;
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
    public List<String> notes(ViewSolver.Solution solution) {
        String size = String.format(Locale.ROOT, "Rectangle of %.1f by %.1f mm", found.sizeXMm(), found.sizeYMm());
        String basis = found.byEdges()
                ? String.format(
                        Locale.ROOT,
                        "%s: the straight edges between its corners were found, %d points of them, each to %.2f pixels.",
                        size,
                        solution.used(),
                        solution.pixelSigma())
                : String.format(
                        Locale.ROOT,
                        "%s: by its four corners alone. A corner that is off by one pixel is off by %.2f mm; set them as"
                                + " near as you can.",
                        size,
                        solution.view().mmPerPx());
        return List.of(basis);
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
