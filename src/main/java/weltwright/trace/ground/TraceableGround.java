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
    HiddenArea hiddenArea(DecodedPhoto picture, CameraView view);

    /**
     * What hides the ground, and what the bare ground would show there.
     *
     * @param contour of what hides the ground, on the ground's plane, closed and counter-clockwise, in mm
     * @param pattern what the bare ground would show; its masks are closed
     * @param roughMm over what length the contour may stray: so far it is smoothed
     * @param visibility what the ground's print says of what is hidden
     * @param ends where its lines end at what hides them
     * @param isSteelGrey whether the ground is as grey and as bright as steel may be, and tells little by its print
     * @param shadowMm what taking a shadow for the knife may put the outline off by, at 95 %; 0 where the print tells
     */
    record HiddenArea(
            Polyline contour,
            double roughMm,
            PrintPattern pattern,
            PrintVisibility visibility,
            PrintedLineEnds ends,
            boolean isSteelGrey,
            double shadowMm) {

        /** The same ground with something else known to lie on it. */
        public HiddenArea withContour(Polyline other) {
            return new HiddenArea(other, roughMm, pattern, visibility, ends, isSteelGrey, shadowMm);
        }

        /** Whether nothing is printed on the ground, so that a shadow may pass for the knife. */
        public boolean isBlank() {
            return shadowMm > 0;
        }
    }

    /** Pixels at a raster's border in which the closing and opening of a mask are unreliable; chosen by eye. */
    double BORDER_PX = 4;

    /**
     * Finds the hidden area on a part of the ground, or on the whole ground where it goes on beyond the part.
     *
     * @param finder finds the area on a raster; empty where it goes on beyond the raster
     * @throws UserFacingException where it goes on beyond the ground
     */
    static HiddenArea hiddenArea(
            PlaneRaster part, PlaneRaster whole, Function<PlaneRaster, Optional<HiddenArea>> finder) {
        Optional<HiddenArea> hidden = finder.apply(part).filter(onPart -> !goesOn(onPart.contour(), part));
        if (hidden.isEmpty() && !part.equals(whole)) {
            hidden = finder.apply(whole).filter(onWhole -> !goesOn(onWhole.contour(), whole));
        }
        return hidden.orElseThrow(TraceableGround::goesOn);
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
                .anyMatch(px -> Math.min(px.x(), px.y()) < BORDER_PX
                        || px.x() > raster.columns() - 1 - BORDER_PX
                        || px.y() > raster.rows() - 1 - BORDER_PX);
    }
}
