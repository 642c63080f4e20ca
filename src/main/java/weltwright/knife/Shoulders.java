package weltwright.knife;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds places where both sides of an outline step inwards, as from a handle or a guard to a narrower blade. A
 * reflection or the border of a coating on a blade makes no such steps in the outline.
 *
 * @param ring the outline as {@link LandmarkProposal} takes it
 * @param sides of the ring
 * @param bowMm see {@link HandleEndLine}
 */
public record Shoulders(Polyline ring, OutlineSides sides, double bowMm) {
    /** The two steps of one front lie within this of each other along the knife. Chosen by eye. */
    private static final double LEVEL_MM = 3;

    /** Spacing of the places searched. Chosen by eye. */
    private static final double STEP_MM = 1;

    /** Returns x of the place nearest to the tip at which both sides step inwards; empty where there is none. */
    public OptionalDouble last(double fromX, double toX) {
        for (double x = toX; x >= fromX; x -= STEP_MM) {
            Optional<HandleFrontStep> upper = inward(true, x, STEP_MM);
            if (upper.isPresent()) {
                double at = bladeCorner(upper.get()).x();
                Optional<HandleFrontStep> lower = inward(false, at, LEVEL_MM);
                if (lower.isPresent() && Math.abs(bladeCorner(lower.get()).x() - at) < LEVEL_MM) {
                    return OptionalDouble.of((at + bladeCorner(lower.get()).x()) / 2);
                }
            }
        }
        return OptionalDouble.empty();
    }

    /** Returns whether a side steps inwards or outwards near x. */
    public boolean isStepNear(double x) {
        return HandleFrontStep.find(ring, sides, true, x, LEVEL_MM, bowMm).isPresent()
                || HandleFrontStep.find(ring, sides, false, x, LEVEL_MM, bowMm).isPresent();
    }

    private Optional<HandleFrontStep> inward(boolean above, double x, double searchMm) {
        double sign = above ? 1 : -1;
        return HandleFrontStep.find(ring, sides, above, x, searchMm, bowMm)
                .filter(step -> sign * ring.points().get(step.onHandle()).y()
                        > sign * bladeCorner(step).y());
    }

    private Point bladeCorner(HandleFrontStep step) {
        return ring.points().get(step.onBlade());
    }
}
