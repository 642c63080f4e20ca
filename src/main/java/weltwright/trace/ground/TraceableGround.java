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
import weltwright.message.Messages;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.report.TraceNote;
import weltwright.trace.visibility.PrintVisibility;
import weltwright.trace.visibility.PrintedLineEnds;

/** A ground that was found in a photo: the control points of the view, and what lies on it. */
public interface TraceableGround {
    Messages TEXTS = Messages.of(TraceableGround.class);

    /** Returns the control points from which the view is solved. */
    LocatedGround located();

    /** Returns what was found and how well it fits. */
    List<TraceNote> notes(ViewSolver.Solution solution);

    /** Returns whether it has black print besides lines. */
    default boolean hasBlackPrint() {
        return false;
    }

    /** Returns a search for what lies on it in a picture. */
    HiddenAreaSearch search(DecodedPhoto picture, CameraView view);

    /**
     * Finds what lies on it, of which the user told nothing.
     *
     * @throws UserFacingException where there is no knife, or it goes on beyond the ground
     */
    default HiddenArea hiddenArea(DecodedPhoto picture, CameraView view) {
        return search(picture, view).find(picture, List.of());
    }

    /** A search for what lies on a ground. Keeps what does not depend on what the user tells, for further searches. */
    @FunctionalInterface
    interface HiddenAreaSearch {
        /**
         * Finds it.
         *
         * @param picture that for which the search was made, or the same decoded again
         * @param told points of the ground at which the user told whether it is hidden by the knife
         * @throws UserFacingException where there is no knife, or it goes on beyond the ground
         */
        HiddenArea find(DecodedPhoto picture, List<PrintVisibility.Observation> told);
    }

    /**
     * The area of the ground that the knife hides, with the print there.
     *
     * @param contour of the area on the ground's plane, closed and counter-clockwise, in mm
     * @param roughMm standard deviation with which the contour is to be smoothed
     * @param pattern print of the bare ground; its masks are closed
     * @param visibility where the print is visible and where it is hidden
     * @param ends where the ground's lines end at the area
     * @param isSteelGrey whether the ground is as grey and as bright as steel may be
     * @param shadowMm error of the outline at 95 % by mistaking a shadow for the knife; 0 where print excludes that
     */
    record HiddenArea(
            Polyline contour,
            double roughMm,
            PrintPattern pattern,
            PrintVisibility visibility,
            PrintedLineEnds ends,
            boolean isSteelGrey,
            double shadowMm) {

        /** Returns this with another contour. */
        public HiddenArea withContour(Polyline other) {
            return new HiddenArea(other, roughMm, pattern, visibility, ends, isSteelGrey, shadowMm);
        }

        /** Returns whether the ground is without print, so that a shadow may be mistaken for the knife. */
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

    /** Returns the error for a knife that goes on beyond the ground. */
    static UserFacingException goesOn() {
        return new UserFacingException(
                TEXTS.text("traceable-ground.something-reaches-beyond-the-edge"),
                TEXTS.text("traceable-ground.lay-all-of-the-knife"));
    }

    private static boolean goesOn(Polyline contour, PlaneRaster raster) {
        return contour.points().stream()
                .map(raster::pixel)
                .anyMatch(px -> Math.min(px.x(), px.y()) < BORDER_PX
                        || px.x() > raster.columns() - 1 - BORDER_PX
                        || px.y() > raster.rows() - 1 - BORDER_PX);
    }
}
