package weltwright.knife;

import java.util.function.UnaryOperator;
import weltwright.geometry.Point;

/**
 * A guard, bolster or finger guard: a short part between blade and handle that stands out from both, before which the
 * throat of a sheath ends. Both points lie on the knife's outline; only their x is used.
 *
 * @param front its end towards the tip
 * @param back its end towards the butt
 */
public record Guard(Point front, Point back) {

    /** Returns the guard with each point moved. */
    public Guard map(UnaryOperator<Point> motion) {
        return new Guard(motion.apply(front), motion.apply(back));
    }

    /** Returns x of its end towards the tip, in mm, whichever of its points that is. */
    public double frontMm() {
        return Math.max(front.x(), back.x());
    }

    /** Returns x of its end towards the butt, in mm. */
    public double backMm() {
        return Math.min(front.x(), back.x());
    }

    /** Returns its length along the knife, in mm. */
    public double lengthMm() {
        return frontMm() - backMm();
    }
}
