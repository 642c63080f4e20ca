package weltwright.knife;

import java.util.function.UnaryOperator;
import weltwright.geometry.Point;

/**
 * A guard, a bolster or a finger guard: a short part between blade and handle that stands out from both, so that the
 * throat of a sheath ends before it. Both points are points of the knife's outline; only where they are along the knife
 * counts.
 *
 * @param front where it ends towards the tip
 * @param back where it ends towards the butt
 */
public record Guard(Point front, Point back) {

    /** Each point moved. */
    public Guard map(UnaryOperator<Point> motion) {
        return new Guard(motion.apply(front), motion.apply(back));
    }

    /** x of its end towards the tip, also where its two points were exchanged. */
    public double frontMm() {
        return Math.max(front.x(), back.x());
    }

    /** x of its end towards the butt. */
    public double backMm() {
        return Math.min(front.x(), back.x());
    }

    /** How far it reaches along the knife. */
    public double lengthMm() {
        return frontMm() - backMm();
    }
}
