package weltwright.trace;

import java.util.List;
import java.util.Optional;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.LocatedGround;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.RuledFinder;
import weltwright.ground.View;
import weltwright.ground.ViewSolver;

/**
 * A ruled ground, such as a cutting mat or squared paper.
 *
 * @param pitchMm from line to line
 */
record RuledGround(RuledFinder.Found found, double pitchMm, LocatedGround located) implements KnownGround {
    RuledGround(RuledFinder.Found found, double pitchMm) {
        this(found, pitchMm, found.located(pitchMm));
    }

    /** Fine enough for the light over the whole ground, where lines leave room between them. */
    private static final double COARSE_MM_PER_PX = 0.5;

    /** The finder measures a line with its blur; ink covers about this part of that. */
    private static final double INK_PART = 0.7;

    /** Between lines the mask keeps to the knife, and strays by a little where it crosses one. */
    private static final double ROUGH_MM = 1.2;

    @Override
    public List<TraceNote> notes(ViewSolver.Solution solution) {
        return List.of(
                new TraceNote.RulingFound(pitchMm, found.crossings().size(), solution.used(), solution.pixelSigma()));
    }

    @Override
    public Cover cover(Picture picture, View view) {
        var box = found.extent().area().getEnvelopeInternal();
        Point low = new Point(box.getMinX(), box.getMinY());
        Point high = new Point(box.getMaxX(), box.getMaxY());
        RuledPattern ruling = new RuledPattern(pitchMm, found.extent(), lineHalfMm(view));
        GroundRaster coarse = GroundRaster.covering(low, high, Math.min(COARSE_MM_PER_PX, pitchMm / 16));
        Both<PaperLight, PrintLook> both = Both.of(
                () -> light(picture, view, ruling, coarse),
                () -> new RuledSights(ruling, picture, view).look().consistent());
        PrintLook look = both.second();
        GroundRaster part = KnifeMask.around(look.sights(), low, high, pitchMm);
        GroundRaster whole = GroundRaster.covering(low, high, KnifeMask.MM_PER_PX);
        PaperLight light = both.first();
        return KnownGround.cover(
                part, whole, raster -> Optional.of(coverOn(raster, picture, view, ruling, light, look)));
    }

    private Cover coverOn(
            GroundRaster raster, Picture picture, View view, RuledPattern ruling, PaperLight light, PrintLook look) {
        try (GroundPattern pattern = ruling.on(raster)) {
            Polyline contour = contour(pattern, picture, view, ruling, light, look);
            return new Cover(
                    contour,
                    ROUGH_MM,
                    pattern,
                    look,
                    LineEnds.near(contour, located.sketch().lines(), ruling.zoneMm(), raster, picture, view),
                    light.isSteelGrey(),
                    0);
        }
    }

    private static Polyline contour(
            GroundPattern pattern, Picture picture, View view, RuledPattern ruling, PaperLight light, PrintLook look) {
        try (GroundPattern half = pattern.halved()) {
            if (!light.isSteelGrey()) {
                Mat ratio = ratio(half, picture, view, ruling, light);
                Polyline contour = new KnifeMask(ratio, half, ruling.zoneMm()).contour(look.sights());
                ratio.release();
                return contour;
            }
            Mat ratio = ratio(pattern, picture, view, ruling, light);
            Mat halfRatio = new Mat();
            Size size = new Size(half.raster().columns(), half.raster().rows());
            Imgproc.resize(ratio, halfRatio, size, 0, 0, Imgproc.INTER_AREA);
            Polyline contour = new KnifeMask(halfRatio, half, ruling.zoneMm())
                    .contourAmongLines(look.sights(), () -> Sharpness.of(ratio, pattern.paper(), pattern.raster()));
            ratio.release();
            halfRatio.release();
            return contour;
        }
    }

    private static Mat ratio(GroundPattern pattern, Picture picture, View view, RuledPattern ruling, PaperLight light) {
        return GroundRatio.of(pattern, ruling.zoneMm(), part -> {
            GroundRaster raster = part.raster();
            return new GroundRatio.Look(
                    raster.rectified(picture, view, Plane.GROUND, new Placement(0, new Point(0, 0))),
                    light.over(raster));
        });
    }

    /** Half the width of its lines on the ground. */
    private double lineHalfMm(View view) {
        return INK_PART * found.lineWidthPx() / 2 / view.pxPerMm();
    }

    private static PaperLight light(Picture picture, View view, RuledPattern ruling, GroundRaster raster) {
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new Placement(0, new Point(0, 0)));
        try (GroundPattern pattern = ruling.on(raster)) {
            return PaperLight.fit(seen, pattern.paper(), raster);
        } finally {
            seen.release();
        }
    }
}
