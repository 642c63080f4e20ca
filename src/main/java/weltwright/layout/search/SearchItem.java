package weltwright.layout.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.layout.collision.OutlineShape;
import weltwright.layout.collision.TurnedShape;

/** A shape to be placed, with the turns allowed to it. Shapes that are cut several times share one item. */
public final class SearchItem {
    private final OutlineShape shape;
    private final AllowedTurns turns;
    private final boolean choosy;
    private final List<TurnedShape> turned;

    /** An item that keeps clear of all fixed shapes. */
    public SearchItem(OutlineShape shape, AllowedTurns turns) {
        this(shape, turns, true);
    }

    /** @param choosy whether it keeps clear of fixed shapes {@link FixedShape#forSome}, too */
    public SearchItem(OutlineShape shape, AllowedTurns turns, boolean choosy) {
        this.shape = shape;
        this.turns = turns;
        this.choosy = choosy;
        turned = turns.centresRad().stream()
                .map(rad -> new TurnedShape(shape, rad))
                .toList();
    }

    public OutlineShape shape() {
        return shape;
    }

    public AllowedTurns turns() {
        return turns;
    }

    /** Whether it keeps clear of fixed shapes that only some items keep clear of. */
    public boolean choosy() {
        return choosy;
    }

    /** The shape at each of the directions that are allowed to it. */
    List<TurnedShape> atCentres() {
        return turned;
    }

    /**
     * The shape at the allowed turn at which it is least wide of those at which it fits into a height; of a range of
     * turns each degree is tried. Empty where it fits at none.
     */
    Optional<TurnedShape> narrowest(double height) {
        List<TurnedShape> tried = new ArrayList<>(turned);
        for (double centre : turns.centresRad()) {
            for (double off = Math.toRadians(1); off <= turns.halfRangeRad(); off += Math.toRadians(1)) {
                tried.add(new TurnedShape(shape, centre + off));
                tried.add(new TurnedShape(shape, centre - off));
            }
        }
        return tried.stream()
                .filter(each -> each.height() <= height)
                .min(Comparator.comparingDouble(TurnedShape::width));
    }

    /** The shape at the allowed turn nearest to the given one. */
    TurnedShape at(double turnRad) {
        double nearest = turns.nearest(turnRad);
        if (turns.discrete()) {
            return turned.get(turns.centresRad().indexOf(nearest));
        }
        return new TurnedShape(shape, nearest);
    }
}
