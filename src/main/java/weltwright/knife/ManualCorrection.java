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
 * What a user corrected by hand on one outline of a knife, to be done again on another: traced anew with other
 * thicknesses the same knife comes out a little larger or smaller, and the same stretches are wrong again.
 *
 * @param proposed the outline as it was proposed
 * @param corrected the same as the user left it
 */
public record ManualCorrection(Silhouette proposed, Silhouette corrected) {
    private static final double STEP_MM = 0.25;

    /** What moved by less was not moved by a hand. */
    private static final double MOVED_MM = 0.06;

    /** A corrected stretch is taken with this much of what was right on either side. */
    private static final double MARGIN_MM = 4;

    /** The same on another outline as proposed. Where a stretch does not fit there, it stays as proposed. */
    public Silhouette on(Silhouette anew) {
        boolean sameSide = corrected.spineOnLeft() == proposed.spineOnLeft();
        Silhouette before = sameSide ? proposed : proposed.withOtherSide();
        Silhouette result = anew.spineOnLeft() == corrected.spineOnLeft() ? anew : anew.withOtherSide();
        UnaryOperator<Point> motion = motion(before, result);
        for (Polyline stretch : stretches()) {
            result = redone(result, stretch.map(motion));
        }
        if (!guardIsAlike(corrected, before)) {
            result = result.withGuard(corrected.landmarks().guard().map(guard -> guard.map(motion)));
            result = result.withOutline(result.outline());
        }
        for (MovableLandmark place : MovableLandmark.on(corrected)) {
            if (place.isOn(before) && place.of(corrected).distance(place.of(before)) > MOVED_MM) {
                result = place.pulled(result, motion.apply(place.of(corrected)));
            }
        }
        return result;
    }

    /** Whether both have a guard, or neither has. */
    private static boolean guardIsAlike(Silhouette one, Silhouette other) {
        return one.landmarks().guard().isPresent() == other.landmarks().guard().isPresent();
    }

    /** Larger or smaller about the heel, on which both frames have their origin. */
    private static UnaryOperator<Point> motion(Silhouette from, Silhouette to) {
        double scale = to.overallLengthMm() / from.overallLengthMm();
        return p -> p.times(scale);
    }

    private static Silhouette redone(Silhouette silhouette, Polyline line) {
        try {
            Outline redrawn = OutlineEdit.redrawn(silhouette.outline(), line);
            return silhouette.withOutline(redrawn);
        } catch (UserFacingException doesNotFit) {
            return silhouette;
        }
    }

    /** Stretches of the corrected outline that do not run where it was proposed, with their margins. */
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
