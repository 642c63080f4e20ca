package weltwright.trace;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.ground.LocatedGround;
import weltwright.ground.PaperFinder;
import weltwright.ground.Picture;
import weltwright.ground.PictureLight;
import weltwright.ground.Plane;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;
import weltwright.trouble.Trouble;

/**
 * A blank sheet of paper as a ground. It has no print, so hard shadows may be taken for the knife on it.
 *
 * @param isSizeInferred whether its size follows from its proportions and was not told
 */
record PaperGround(PaperFinder.Found found, boolean isSizeInferred, LocatedGround located) implements KnownGround {
    PaperGround(PaperFinder.Found found, boolean isSizeInferred) {
        this(found, isSizeInferred, found.located());
    }

    /** A knife floats several millimetres up, and so far beside it falls a hard shadow's edge. Common practice. */
    private static final double HARD_SHADOW_MM = 4;

    /**
     * Right beside the knife even a soft shadow is narrow, and its rim may pass for the knife's where steel is grey.
     */
    private static final double SOFT_SHADOW_MM = 0.25;

    private static final double ROUGH_MM = 0.9;

    /** The very rim of the paper is left out: it curls, and the table shows beside it. */
    private static final double RIM_MM = 3;

    /** The knife and its shade hide less than half of what is looked at. */
    private static final double BURNT_PART = 0.5;

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        TraceNote size = new TraceNote.PaperFound(
                found.sizeXMm(), found.sizeYMm(), found.edges().size(), solution.used(), solution.pixelSigma());
        return isSizeInferred ? List.of(size, new TraceNote.PaperSizeFromProportions()) : List.of(size);
    }

    @Override
    public Cover cover(Picture picture, View view) {
        Point half = new Point(found.sizeXMm() / 2 - RIM_MM, found.sizeYMm() / 2 - RIM_MM);
        GroundRaster whole = GroundRaster.covering(half.times(-1), half, KnifeMask.MM_PER_PX);
        GroundRaster part = DarkPart.of(half, picture, view)
                .map(box -> GroundRaster.covering(box.low(), box.high(), KnifeMask.MM_PER_PX))
                .orElse(whole);
        return KnownGround.cover(part, whole, raster -> coverOn(raster, picture, view));
    }

    private static Optional<Cover> coverOn(GroundRaster raster, Picture picture, View view) {
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new Placement(0, new Point(0, 0)));
        try (GroundPattern pattern = blank(raster)) {
            checkNotBurntOut(seen);
            return new SharpOutline(Sharpness.of(seen, pattern.paper(), raster))
                    .find()
                    .map(found -> new Cover(
                            found.contour(),
                            ROUGH_MM,
                            pattern,
                            new PrintLook(List.of(), List.of(), new double[3]),
                            LineEnds.none(),
                            true,
                            found.hasRival() ? HARD_SHADOW_MM : SOFT_SHADOW_MM));
        } finally {
            seen.release();
        }
    }

    /** Steel that is as bright as paper, or brighter, shows beside it by less than a camera's range is then left. */
    private static void checkNotBurntOut(Mat seen) {
        Mat burnt = new Mat();
        Core.inRange(seen, Scalar.all(PictureLight.BURNT), Scalar.all(255), burnt);
        double part = Core.countNonZero(burnt) / (double) burnt.total();
        burnt.release();
        if (part > BURNT_PART) {
            throw new Trouble(
                    "The paper is burnt out to plain white, so what is as bright as it does not show on it.",
                    "Photograph it again with less light or a lower exposure, or on the printed sheet.");
        }
    }

    private static GroundPattern blank(GroundRaster raster) {
        return new GroundPattern(
                raster,
                new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(255)),
                new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0)),
                new byte[raster.columns() * raster.rows()]);
    }
}
