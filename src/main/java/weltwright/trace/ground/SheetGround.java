package weltwright.trace.ground;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.ground.LocatedGround;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.ground.sheet.ReferenceSheetFinder;
import weltwright.image.DecodedPhoto;
import weltwright.image.parallel.ParallelPair;
import weltwright.message.Messages;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.appearance.RelativeReflectance;
import weltwright.trace.appearance.SheetAppearance;
import weltwright.trace.appearance.SheetPrintPattern;
import weltwright.trace.report.TraceNote;
import weltwright.trace.segment.KnifeMask;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintedLineEnds;
import weltwright.trace.visibility.SheetPrintVisibility;
import weltwright.units.PrintScale;

/**
 * The printed reference sheet as a ground.
 *
 * @param scale scale at which it was printed
 */
record SheetGround(ReferenceSheetFinder.Found found, PrintScale scale, LocatedGround located)
        implements TraceableGround {
    private static final Messages TEXTS = Messages.of(SheetGround.class);

    SheetGround(ReferenceSheetFinder.Found found, PrintScale scale) {
        this(found, scale, found.located(scale));
    }

    /** Resolution of the raster on which the illumination is fitted; chosen by eye. */
    private static final double COARSE_MM_PER_PX = 0.6;

    /** Standard deviation of the contour's smoothing, for errors of the mask beside lines; chosen by eye. */
    private static final double ROUGH_MM = 1.2;

    /** Margin of the paper that is left out, since it curls and throws a shadow of its own; chosen by eye. */
    private static final double MARGIN_MM = 1;

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        return List.of(new TraceNote.SheetFound(
                found.sheet().pageName(), found.corners().size(), solution.inliers(), solution.pixelSigma()));
    }

    @Override
    public boolean hasBlackPrint() {
        return true;
    }

    @Override
    public HiddenAreaSearch search(DecodedPhoto picture, CameraView view) {
        ReferenceSheet sheet = found.sheet();
        Point half = new Point(
                sheet.pageWidthMm() / 2 * scale.x() - MARGIN_MM, sheet.pageHeightMm() / 2 * scale.y() - MARGIN_MM);
        PlaneRaster coarse = PlaneRaster.covering(half.times(-1), half, COARSE_MM_PER_PX);
        ParallelPair<SheetAppearance, PrintVisibility> both = ParallelPair.of(
                () -> SheetAppearance.of(picture, view, sheet, scale, coarse),
                () -> new SheetPrintVisibility(sheet, scale, picture, view)
                        .measure()
                        .consistent());
        PrintVisibility seen = both.second();
        if (!seen.showsLines()) {
            checkExposure(picture, view);
        }
        PlaneRaster part = KnifeMask.around(seen.observations(), half.times(-1), half, sheet.squareMm());
        PlaneRaster whole = PlaneRaster.covering(half.times(-1), half, KnifeMask.MM_PER_PX);
        return (same, told) -> TraceableGround.hiddenArea(
                part,
                whole,
                raster -> Optional.of(hiddenAreaOn(raster, same, view, both.first(), seen.withTold(told))));
    }

    private void checkExposure(DecodedPhoto picture, CameraView view) {
        ReferenceSheet sheet = found.sheet();
        int frame = ReferenceSheet.FRAME_SQUARES;
        Point corner = sheet.gridPoint(sheet.squaresAcross() - frame, frame);
        Point half = new Point(Math.abs(corner.x()) * scale.x(), Math.abs(corner.y()) * scale.y());
        Mat workingArea = PlaneRaster.covering(half.times(-1), half, COARSE_MM_PER_PX)
                .rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        try {
            OverexposedPaper.check(workingArea, TEXTS.text("sheet-ground.photograph-it-again-with-less"));
        } finally {
            workingArea.release();
        }
    }

    private HiddenArea hiddenAreaOn(
            PlaneRaster raster,
            DecodedPhoto picture,
            CameraView view,
            SheetAppearance bare,
            PrintVisibility visibility) {
        try (PrintPattern pattern = SheetPrintPattern.of(found.sheet(), scale, raster);
                PrintPattern half = pattern.halved()) {
            Mat ratio = ratio(half, picture, view, bare);
            KnifeMask.Found knife = new KnifeMask(ratio, half, SheetPrintPattern.LINE_ZONE_MM).find(visibility);
            ratio.release();
            List<Polyline> lines = SheetPrintPattern.lines(found.sheet(), scale);
            return new HiddenArea(
                    knife.contour(),
                    ROUGH_MM,
                    pattern,
                    knife.visibility(),
                    PrintedLineEnds.near(knife.contour(), lines, SheetPrintPattern.LINE_ZONE_MM, raster, picture, view),
                    false,
                    0);
        }
    }

    private static Mat ratio(PrintPattern pattern, DecodedPhoto picture, CameraView view, SheetAppearance bare) {
        return RelativeReflectance.of(pattern, SheetPrintPattern.LINE_ZONE_MM, part -> {
            PlaneRaster raster = part.raster();
            Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
            Mat expected = bare.expected(raster, part);
            showBare(seen, expected, raster.outsideMask(picture, view));
            return new RelativeReflectance.Comparison(seen, expected);
        });
    }

    /**
     * Sets the pixels outside of the photo to the bare sheet, so that a knife that goes on there ends at its border.
     */
    private static void showBare(Mat seen, Mat expected, Mat outside) {
        Mat bare = new Mat();
        expected.convertTo(bare, seen.type());
        bare.copyTo(seen, outside);
        bare.release();
        outside.release();
    }
}
