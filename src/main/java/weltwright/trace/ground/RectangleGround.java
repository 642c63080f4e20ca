package weltwright.trace.ground;

import java.util.List;
import weltwright.camera.CameraView;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.ground.LocatedGround;
import weltwright.ground.paper.PaperSheetFinder;
import weltwright.ground.rectangle.RectangleFinder;
import weltwright.image.DecodedPhoto;
import weltwright.trace.report.TraceNote;

/** A rectangle of known size whose corners were marked by hand. What lies on it is found as on blank paper. */
record RectangleGround(RectangleFinder.Found found, LocatedGround located) implements TraceableGround {
    RectangleGround(RectangleFinder.Found found) {
        this(found, found.located());
    }

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        return List.of(
                found.byEdges()
                        ? new TraceNote.RectangleByEdges(
                                found.sizeXMm(), found.sizeYMm(), solution.inliers(), solution.pixelSigma())
                        : new TraceNote.RectangleByCorners(
                                found.sizeXMm(),
                                found.sizeYMm(),
                                solution.view().mmPerPx()));
    }

    @Override
    public HiddenAreaSearch search(DecodedPhoto picture, CameraView view) {
        return blank().search(picture, view);
    }

    private PaperGround blank() {
        return new PaperGround(new PaperSheetFinder.Found(found.references(), found.sizeXMm(), found.sizeYMm()), false);
    }
}
