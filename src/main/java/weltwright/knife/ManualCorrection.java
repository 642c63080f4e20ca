package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;

/**
 * The corrections that a user made by hand to an outline, to be repeated on another outline of the same knife. Traced
 * again with other thicknesses, a knife comes out a little larger or smaller, and its trace is wrong in the same
 * places. All have the spine on the same side.
 *
 * @param proposed the outline as it was proposed
 * @param corrected the outline as the user left it
 */
public record ManualCorrection(Silhouette proposed, Silhouette corrected) {
    /** Sampling step of outlines. Chosen by eye. */
    private static final double STEP_MM = 0.25;

    /**
     * Displacements below this are not taken for corrections: fitting alone moves a curve by as much. Chosen by eye.
     */
    private static final double MOVED_MM = 0.06;

    /** Length of unchanged outline that is redrawn at either end of a corrected stretch. Chosen by eye. */
    private static final double MARGIN_MM = 4;

    /** Applies the corrections to another proposed outline. A stretch that does not fit there is left as proposed. */
    public Silhouette on(Silhouette other) {
        Silhouette result = other;
        UnaryOperator<Point> motion = motion(proposed, result);
        for (Polyline stretch : stretches()) {
            result = redrawn(result, stretch.map(motion));
        }
        if (!sameGuardPresence(corrected, proposed)) {
            result = result.withGuard(corrected.landmarks().guard().map(guard -> guard.map(motion)));
            result = result.withOutline(result.outline());
        }
        for (MovableLandmark place : MovableLandmark.on(corrected)) {
            if (place.isOn(proposed) && place.of(corrected).distance(place.of(proposed)) > MOVED_MM) {
                result = place.pulled(result, motion.apply(place.of(corrected)));
            }
        }
        return result;
    }

    /** Returns whether both have a guard or neither has. */
    private static boolean sameGuardPresence(Silhouette one, Silhouette other) {
        return one.landmarks().guard().isPresent() == other.landmarks().guard().isPresent();
    }

    /** Returns the scaling between two outlines about the heel, the origin of both frames. */
    private static UnaryOperator<Point> motion(Silhouette from, Silhouette to) {
        double scale = to.overallLengthMm() / from.overallLengthMm();
        return p -> p.times(scale);
    }

    private static Silhouette redrawn(Silhouette silhouette, Polyline line) {
        try {
            Outline outline = OutlineEdit.redrawn(silhouette.outline(), line);
            return silhouette.withOutline(outline);
        } catch (UserFacingException doesNotFit) {
            return silhouette;
        }
    }

    /** Returns the stretches of the corrected outline that differ from the proposed one, with their margins. */
    private List<Polyline> stretches() {
        if (corrected.outline().equals(proposed.outline())) {
            return List.of();
        }
        Polyline was = proposed.outline().sampled(STEP_MM);
        Polyline is = corrected.outline().sampled(STEP_MM).resampled(STEP_MM);
        int n = is.points().size();
        double step = is.lengthMm() / n;
        int margin = (int) Math.ceil(MARGIN_MM / step);
        boolean[] moved = new boolean[n];
        for (int i = 0; i < n; i++) {
            Point p = is.points().get(i);
            if (was.at(was.stationOf(p)).distance(p) > MOVED_MM) {
                for (int k = -margin; k <= margin; k++) {
                    moved[Math.floorMod(i + k, n)] = true;
                }
            }
        }
        List<Polyline> stretches = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (moved[i] && !moved[Math.floorMod(i - 1, n)]) {
                int length = 0;
                while (moved[(i + length + 1) % n]) {
                    length++;
                }
                stretches.add(is.stretch(i * step, (i + length) * step));
            }
        }
        return stretches;
    }
}
