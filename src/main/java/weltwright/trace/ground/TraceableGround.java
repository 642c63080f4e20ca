package weltwright.trace.ground;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import weltwright.camera.CameraView;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.error.UserFacingException;
import weltwright.geometry.Polyline;
import weltwright.ground.LocatedGround;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.report.TraceNote;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintedLineEnds;

/** A ground that was found in a picture: what the view is solved from, and what lies on it. */
public interface TraceableGround {
    /** What the view is solved from. */
    LocatedGround located();

    /** What was found and how well it fits. */
    List<TraceNote> notes(ViewSolver.Solution solution);

    /** Whether it has black print, and not lines alone. */
    default boolean hasBlackPrint() {
        return false;
    }

    /** What lies on it. */
    Cover cover(DecodedPhoto picture, CameraView view);

    /**
     * What hides the ground, and what the bare ground would show there.
     *
     * @param contour of what hides the ground, on the ground's plane, closed and counter-clockwise, in mm
     * @param pattern what the bare ground would show; its masks are closed
     * @param roughMm over what length the contour may stray: so far it is smoothed
     * @param look what the ground's print says of what is hidden
     * @param ends where its lines end at what hides them
     * @param isSteelGrey whether the ground is as grey and as bright as steel may be, and tells little by its print
     * @param shadowMm what taking a shadow for the knife may put the outline off by, at 95 %; 0 where the print tells
     */
    record Cover(
            Polyline contour,
            double roughMm,
            PrintPattern pattern,
            PrintVisibility look,
            PrintedLineEnds ends,
            boolean isSteelGrey,
            double shadowMm) {

        /** The same ground with something else known to lie on it. */
        public Cover withContour(Polyline other) {
            return new Cover(other, roughMm, pattern, look, ends, isSteelGrey, shadowMm);
        }

        /** Whether nothing is printed on the ground, so that a shadow may pass for the knife. */
        public boolean isBlank() {
            return shadowMm > 0;
        }
    }

    /** A mask's closing and opening are not to be relied on in a raster's outermost pixels. */
    double RIM_PX = 4;

    /**
     * What lies on a part of the ground, or on all of it where what was found on the part goes on beyond it.
     *
     * @param look what lies on a raster; empty where it goes on beyond it
     * @throws UserFacingException where it goes on beyond the ground
     */
    static Cover cover(PlaneRaster part, PlaneRaster whole, Function<PlaneRaster, Optional<Cover>> look) {
        Optional<Cover> cover = look.apply(part).filter(onPart -> !goesOn(onPart.contour(), part));
        if (cover.isEmpty() && !part.equals(whole)) {
            cover = look.apply(whole).filter(onWhole -> !goesOn(onWhole.contour(), whole));
        }
        return cover.orElseThrow(TraceableGround::goesOn);
    }

    static UserFacingException goesOn() {
        return new UserFacingException(
                "Something reaches beyond the edge of the ground: the knife, or what else lies there.",
                "Lay all of the knife on the ground and nothing else over its edge, or use a larger sheet, and photograph it"
                        + " again.");
    }

    private static boolean goesOn(Polyline contour, PlaneRaster raster) {
        return contour.points().stream()
                .map(raster::pixel)
                .anyMatch(px -> Math.min(px.x(), px.y()) < RIM_PX
                        || px.x() > raster.columns() - 1 - RIM_PX
                        || px.y() > raster.rows() - 1 - RIM_PX);
    }
}
