package weltwright.knife;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import weltwright.geometry.Point;

/**
 * The landmarks of a knife from which a sheath is built. They are proposed from the outline; the user may move each,
 * and add or remove the guard. All are points of the outline, in its frame, in mm.
 *
 * @param tip the point of the blade
 * @param heel where the cutting edge begins, next to the handle
 * @param spineStart the point of the spine across from the heel, where the handle begins on that side
 * @param butt the far end of the handle
 * @param guard between blade and handle, if there is one
 */
@RecordBuilder
public record Landmarks(Point tip, Point heel, Point spineStart, Point butt, Optional<Guard> guard)
        implements LandmarksBuilder.With {

    public Landmarks {
        Objects.requireNonNull(guard);
    }

    /** Landmarks of a knife without a guard. */
    public Landmarks(Point tip, Point heel, Point spineStart, Point butt) {
        this(tip, heel, spineStart, butt, Optional.empty());
    }

    /** Returns the landmarks with each point moved. */
    public Landmarks map(UnaryOperator<Point> motion) {
        return new Landmarks(
                motion.apply(tip),
                motion.apply(heel),
                motion.apply(spineStart),
                motion.apply(butt),
                guard.map(g -> g.map(motion)));
    }
}
