package weltwright.knife;

import java.util.function.UnaryOperator;
import weltwright.geometry.Point;

/**
 * The places on a knife's outline that a sheath is built on. Proposed from the outline, never forced: the user may move
 * each. All are points of the outline, in the same frame as it, in mm.
 *
 * @param tip the point of the blade
 * @param heel where the cutting edge begins, next to the handle
 * @param spineStart the point of the spine across from the heel, where the handle begins on that side
 * @param butt the far end of the handle
 */
public record Landmarks(Point tip, Point heel, Point spineStart, Point butt) {

    /** Each landmark moved. */
    public Landmarks map(UnaryOperator<Point> motion) {
        return new Landmarks(motion.apply(tip), motion.apply(heel), motion.apply(spineStart), motion.apply(butt));
    }
}
