package weltwright.trace.ground;

import java.util.List;
import java.util.Optional;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.ground.LocatedGround;
import weltwright.ground.paper.PaperSheetFinder;
import weltwright.image.DecodedPhoto;
import weltwright.message.Messages;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.report.TraceNote;
import weltwright.trace.segment.DarkRegion;
import weltwright.trace.segment.KnifeMask;
import weltwright.trace.segment.SharpContourFinder;
import weltwright.trace.segment.SharpnessMap;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintedLineEnds;

/**
 * A blank sheet of paper as a ground. Since it has no print, a hard shadow may be mistaken for the knife.
 *
 * @param isSizeInferred whether its size was inferred from its proportions and not entered
 */
record PaperGround(PaperSheetFinder.Found found, boolean isSizeInferred, LocatedGround located)
        implements TraceableGround {
    private static final Messages TEXTS = Messages.of(PaperGround.class);

    PaperGround(PaperSheetFinder.Found found, boolean isSizeInferred) {
        this(found, isSizeInferred, found.located());
    }

    /**
     * Error by a hard shadow, whose edge falls beside a knife several millimetres above the ground. Common practice.
     */
    private static final double HARD_SHADOW_MM = 4;

    /** Error by a soft shadow, narrow beside the knife, whose border may pass for that of grey steel; by eye. */
    private static final double SOFT_SHADOW_MM = 0.25;

    /** Standard deviation of the contour's smoothing; chosen by eye. */
    private static final double ROUGH_MM = 0.9;

    /** Margin of the sheet that is left out, since paper curls and the table shows beside it; chosen by eye. */
    private static final double MARGIN_MM = 3;

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        TraceNote size = new TraceNote.PaperFound(
                found.sizeXMm(), found.sizeYMm(), found.edges().size(), solution.inliers(), solution.pixelSigma());
        return isSizeInferred ? List.of(size, new TraceNote.PaperSizeFromProportions()) : List.of(size);
    }

    @Override
    public HiddenAreaSearch search(DecodedPhoto picture, CameraView view) {
        HiddenArea found = find(picture, view); // marks tell nothing of a ground without print
        return (same, told) -> found;
    }

    private HiddenArea find(DecodedPhoto picture, CameraView view) {
        Point half = new Point(found.sizeXMm() / 2 - MARGIN_MM, found.sizeYMm() / 2 - MARGIN_MM);
        PlaneRaster whole = PlaneRaster.covering(half.times(-1), half, KnifeMask.MM_PER_PX);
        PlaneRaster part = DarkRegion.of(half, picture, view)
                .map(box -> PlaneRaster.covering(box.low(), box.high(), KnifeMask.MM_PER_PX))
                .orElse(whole);
        return TraceableGround.hiddenArea(part, whole, raster -> hiddenAreaOn(raster, picture, view));
    }

    private static Optional<HiddenArea> hiddenAreaOn(PlaneRaster raster, DecodedPhoto picture, CameraView view) {
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        try (PrintPattern pattern = blank(raster)) {
            OverexposedPaper.check(seen, TEXTS.text("paper-ground.photograph-it-again-with-less"));
            return new SharpContourFinder(SharpnessMap.of(seen, pattern.paper(), raster))
                    .find()
                    .map(found -> new HiddenArea(
                            found.contour(),
                            ROUGH_MM,
                            pattern,
                            new PrintVisibility(List.of(), List.of(), new double[3]),
                            PrintedLineEnds.none(),
                            true,
                            found.hasSecondLine() ? HARD_SHADOW_MM : SOFT_SHADOW_MM));
        } finally {
            seen.release();
        }
    }

    private static PrintPattern blank(PlaneRaster raster) {
        return new PrintPattern(
                raster,
                new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(255)),
                new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0)),
                new byte[raster.columns() * raster.rows()]);
    }
}
