package weltwright.trace;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.LocatedGround;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.ReferenceSheet;
import weltwright.ground.SheetFinder;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;
import weltwright.measure.PrintScale;

/**
 * The printed reference sheet as a ground.
 *
 * @param scale what its bars measure
 */
record SheetGround(SheetFinder.Found found, PrintScale scale, LocatedGround located) implements KnownGround {
    SheetGround(SheetFinder.Found found, PrintScale scale) {
        this(found, scale, found.located(scale));
    }

    /** Fine enough for the light over the whole sheet. */
    private static final double COARSE_MM_PER_PX = 0.6;

    /** Paper is smooth and the sheet's lines are far apart: the mask strays beside a line only. */
    private static final double ROUGH_MM = 1.2;

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        return List.of(new TraceNote.SheetFound(
                found.sheet().pageName(), found.corners().size(), solution.used(), solution.pixelSigma()));
    }

    @Override
    public boolean hasBlackPrint() {
        return true;
    }

    @Override
    public Cover cover(Picture picture, View view) {
        ReferenceSheet sheet = found.sheet();
        // The very rim of the paper is left out: it curls, and throws a shadow of its own.
        Point half = new Point(sheet.pageWidthMm() / 2 * scale.x() - 1, sheet.pageHeightMm() / 2 * scale.y() - 1);
        GroundRaster coarse = GroundRaster.covering(half.times(-1), half, COARSE_MM_PER_PX);
        Both<SheetLook, PrintLook> both = Both.of(
                () -> SheetLook.of(picture, view, sheet, scale, coarse),
                () -> new SheetSights(sheet, scale, picture, view).look().consistent());
        PrintLook look = both.second();
        GroundRaster part = KnifeMask.around(look.sights(), half.times(-1), half, sheet.squareMm());
        GroundRaster whole = GroundRaster.covering(half.times(-1), half, KnifeMask.MM_PER_PX);
        return KnownGround.cover(
                part, whole, raster -> Optional.of(coverOn(raster, picture, view, both.first(), look)));
    }

    private Cover coverOn(GroundRaster raster, Picture picture, View view, SheetLook bare, PrintLook look) {
        try (GroundPattern pattern = SheetPattern.of(found.sheet(), scale, raster);
                GroundPattern half = pattern.halved()) {
            Mat ratio = ratio(half, picture, view, bare);
            Polyline contour = new KnifeMask(ratio, half, SheetPattern.LINE_ZONE_MM).contour(look.sights());
            ratio.release();
            List<Polyline> lines = SheetPattern.lines(found.sheet(), scale);
            return new Cover(
                    contour,
                    ROUGH_MM,
                    pattern,
                    look,
                    LineEnds.near(contour, lines, SheetPattern.LINE_ZONE_MM, raster, picture, view),
                    false,
                    0);
        }
    }

    private static Mat ratio(GroundPattern pattern, Picture picture, View view, SheetLook bare) {
        return GroundRatio.of(pattern, SheetPattern.LINE_ZONE_MM, part -> {
            GroundRaster raster = part.raster();
            Mat seen = raster.rectified(picture, view, Plane.GROUND, new Placement(0, new Point(0, 0)));
            Mat expected = bare.expected(raster, part);
            showBare(seen, expected, raster.outside(picture, view));
            return new GroundRatio.Look(seen, expected);
        });
    }

    /**
     * Outside the picture nothing speaks against the bare sheet: a knife that goes on there ends at the picture's rim.
     */
    private static void showBare(Mat seen, Mat expected, Mat outside) {
        Mat bare = new Mat();
        expected.convertTo(bare, seen.type());
        bare.copyTo(seen, outside);
        bare.release();
        outside.release();
    }
}
