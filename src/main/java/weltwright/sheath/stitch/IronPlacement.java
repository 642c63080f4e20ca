package weltwright.sheath.stitch;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Mark;

/**
 * Divides a row of holes into settings of pricking irons with six, four and two teeth. The first tooth stands in the
 * last hole struck, and the last tooth of the last setting falls on the end of the row. Where the row is too curved for
 * an iron, one of fewer teeth is used.
 */
public final class IronPlacement {
    private static final int[] TEETH = {6, 4, 2};

    /** Greatest distance of a tooth from the row. Common practice. */
    private static final double OFF_ROW_MM = 0.25;

    /** Ends of a tick, from the row towards the outer edge. */
    private static final double TICK_FROM_MM = 1;

    private static final double TICK_TO_MM = 2.2;

    private IronPlacement() {}

    /** Returns the mark for an iron whose first tooth stands in a hole. */
    static Mark tick(Point hole, Point outwards) {
        Polyline tick =
                Polyline.open(List.of(hole.plus(outwards.times(TICK_FROM_MM)), hole.plus(outwards.times(TICK_TO_MM))));
        return new Mark(tick, Mark.Kind.IRON, "");
    }

    /**
     * One setting of an iron.
     *
     * @param first index of the hole in which its first tooth stands
     * @param teeth its number of teeth
     */
    public record Step(int first, int teeth) {
        /** Returns the index of the hole that its last tooth strikes; in a closed row it may be past the end. */
        public int last() {
            return first + teeth - 1;
        }
    }

    /**
     * Divides a row of holes into the steps of a pricking iron.
     *
     * @param holes in the order of sewing
     * @param closed whether the last is followed by the first
     */
    public static List<Step> of(List<Point> holes, boolean closed) {
        List<Step> steps = new ArrayList<>();
        int end = closed ? holes.size() : holes.size() - 1;
        int at = 0;
        while (at < end) {
            Step step = new Step(at, 2);
            for (int teeth : TEETH) {
                if (at + teeth - 1 <= end && fits(holes, at, teeth)) {
                    step = new Step(at, teeth);
                    break;
                }
            }
            steps.add(step);
            at = step.last();
        }
        return steps;
    }

    private static boolean fits(List<Point> holes, int first, int teeth) {
        Point a = holes.get(first);
        Point along = holes.get((first + teeth - 1) % holes.size()).minus(a);
        if (along.norm() == 0) {
            return false;
        }
        Point straight = along.unit();
        for (int k = 1; k < teeth - 1; k++) {
            double off = straight.cross(holes.get((first + k) % holes.size()).minus(a));
            if (Math.abs(off) > OFF_ROW_MM) {
                return false;
            }
        }
        return true;
    }
}
