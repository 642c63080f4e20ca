package weltwright.trace.ground;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.ground.LocatedGround;
import weltwright.ground.ruled.RuledGroundFinder;
import weltwright.image.DecodedPhoto;
import weltwright.image.parallel.ParallelPair;
import weltwright.trace.appearance.PaperIllumination;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.appearance.RelativeReflectance;
import weltwright.trace.appearance.RulingPattern;
import weltwright.trace.report.TraceNote;
import weltwright.trace.segment.KnifeMask;
import weltwright.trace.segment.SharpnessMap;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintedLineEnds;
import weltwright.trace.visibility.RulingVisibility;

/**
 * A ruled ground, such as a cutting mat or squared paper.
 *
 * @param pitchMm distance of neighbouring lines
 */
record RuledGround(RuledGroundFinder.Found found, double pitchMm, LocatedGround located) implements TraceableGround {
    RuledGround(RuledGroundFinder.Found found, double pitchMm) {
        this(found, pitchMm, found.located(pitchMm));
    }

    /** Resolution of the raster on which the illumination is fitted; chosen by eye. */
    private static final double COARSE_MM_PER_PX = 0.5;

    /** Pixels of that raster from line to line, so that the ground shows between them; chosen by eye. */
    private static final double COARSE_PX_PER_PITCH = 16;

    /** Width of a printed line as a part of the width found, which includes blur; chosen by eye. */
    private static final double INK_PART = 0.7;

    /** Standard deviation of the contour's smoothing, for errors of the mask where it crosses lines; by eye. */
    private static final double ROUGH_MM = 1.2;

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        return List.of(new TraceNote.RulingFound(
                pitchMm, found.crossings().size(), solution.inliers(), solution.pixelSigma()));
    }

    @Override
    public HiddenAreaSearch search(DecodedPhoto picture, CameraView view) {
        var box = found.extent().area().getEnvelopeInternal();
        Point low = new Point(box.getMinX(), box.getMinY());
        Point high = new Point(box.getMaxX(), box.getMaxY());
        RulingPattern ruling = new RulingPattern(pitchMm, found.extent(), lineHalfMm(view));
        PlaneRaster coarse = PlaneRaster.covering(low, high, Math.min(COARSE_MM_PER_PX, pitchMm / COARSE_PX_PER_PITCH));
        ParallelPair<PaperIllumination, PrintVisibility> both = ParallelPair.of(
                () -> light(picture, view, ruling, coarse),
                () -> new RulingVisibility(ruling, picture, view).measure().consistent());
        PrintVisibility seen = both.second();
        PlaneRaster part = KnifeMask.around(seen.observations(), low, high, pitchMm);
        PlaneRaster whole = PlaneRaster.covering(low, high, KnifeMask.MM_PER_PX);
        PaperIllumination light = both.first();
        return (same, told) -> TraceableGround.hiddenArea(
                part,
                whole,
                raster -> Optional.of(hiddenAreaOn(raster, same, view, ruling, light, seen.withTold(told))));
    }

    private HiddenArea hiddenAreaOn(
            PlaneRaster raster,
            DecodedPhoto picture,
            CameraView view,
            RulingPattern ruling,
            PaperIllumination light,
            PrintVisibility visibility) {
        try (PrintPattern pattern = ruling.on(raster)) {
            KnifeMask.Found knife = knife(pattern, picture, view, ruling, light, visibility);
            return new HiddenArea(
                    knife.contour(),
                    ROUGH_MM,
                    pattern,
                    knife.visibility(),
                    PrintedLineEnds.near(
                            knife.contour(), located.groundLines().lines(), ruling.zoneMm(), raster, picture, view),
                    light.isSteelGrey(),
                    0);
        }
    }

    private static KnifeMask.Found knife(
            PrintPattern pattern,
            DecodedPhoto picture,
            CameraView view,
            RulingPattern ruling,
            PaperIllumination light,
            PrintVisibility visibility) {
        try (PrintPattern half = pattern.halved()) {
            if (!light.isSteelGrey()) {
                Mat ratio = ratio(half, picture, view, ruling, light);
                KnifeMask.Found knife = new KnifeMask(ratio, half, ruling.zoneMm()).find(visibility);
                ratio.release();
                return knife;
            }
            Mat ratio = ratio(pattern, picture, view, ruling, light);
            Mat halfRatio = new Mat();
            Size size = new Size(half.raster().columns(), half.raster().rows());
            Imgproc.resize(ratio, halfRatio, size, 0, 0, Imgproc.INTER_AREA);
            KnifeMask.Found knife = new KnifeMask(halfRatio, half, ruling.zoneMm())
                    .findAmongLines(visibility, () -> SharpnessMap.of(ratio, pattern.paper(), pattern.raster()));
            ratio.release();
            halfRatio.release();
            return knife;
        }
    }

    private static Mat ratio(
            PrintPattern pattern,
            DecodedPhoto picture,
            CameraView view,
            RulingPattern ruling,
            PaperIllumination light) {
        return RelativeReflectance.of(pattern, ruling.zoneMm(), part -> {
            PlaneRaster raster = part.raster();
            return new RelativeReflectance.Comparison(
                    raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0))),
                    light.over(raster));
        });
    }

    /** Returns half the width of its lines. */
    private double lineHalfMm(CameraView view) {
        return INK_PART * found.lineWidthPx() / 2 / view.pxPerMm();
    }

    private static PaperIllumination light(
            DecodedPhoto picture, CameraView view, RulingPattern ruling, PlaneRaster raster) {
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        try (PrintPattern pattern = ruling.on(raster)) {
            return PaperIllumination.fit(seen, pattern.paper(), raster);
        } finally {
            seen.release();
        }
    }
}
