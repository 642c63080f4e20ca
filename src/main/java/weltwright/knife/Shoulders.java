package weltwright.knife;

import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Where both sides of a knife's outline step in at the same place, as they do from a handle or a guard to a narrower
 * blade. Nothing in a picture of the blade makes that: not the border of what a polish mirrors, nor that of a coating.
 *
 * @param ring the outline as {@link LandmarkProposal} takes it
 * @param sides of the ring
 * @param bowMm as {@link HandleEndLine} has it
 */
public record Shoulders(Polyline ring, OutlineSides sides, double bowMm) {
    /** Both steps of one front lie within this of each other along the knife. */
    private static final double LEVEL_MM = 3;

    private static final double EVERY_MM = 1;

    /** The place nearest to the tip at which both sides step in; empty where there is none. */
    public OptionalDouble last(double fromX, double toX) {
        for (double x = toX; x >= fromX; x -= EVERY_MM) {
            Optional<HandleFrontStep> upper = inward(true, x, EVERY_MM);
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

    /** Whether a side steps at a place, in or out. */
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
