package weltwright.knife;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds a guard from the shape of an outline alone: a short protrusion of a side near the handle's end, beyond both the
 * blade before it and the handle behind it.
 *
 * <ol>
 *   <li>On each side, local maxima are taken within {@link #REACH_MM} of the handle's end. The height of one is
 *       measured from the higher of its two feet: the least distance of the side from the axis within {@link #FEET_MM}
 *       before and behind it.
 *   <li>The highest is a guard if it is at least {@link #LEAST_HEIGHT_MM} high, and at half its height no thicker,
 *       along the knife, than {@link #THICKEST_MM} and than {@link #THICK_PER_HEIGHT} times its height. The swell of a
 *       handle that is shaped for the fingers is thicker. The side must also stay below half of the height for
 *       {@link #CHOIL_MM} before it, as a blade behind a choil does not.
 *   <li>Each flank ends at its foot: the point of the side that lies farthest below the chord from the top of the flank
 *       to the end of the reach.
 *   <li>A guard reaches from the hindmost foot of both sides to the foremost. It begins at the handle's end or behind
 *       it: what stands out farther on is a shadow that was followed, or belongs to the blade.
 * </ol>
 *
 * <p>Not found are a bolster that stands out across the flats only or by less than leather gives, a guard no wider than
 * the handle behind it, and one that rises gently from the handle over more than a finger's breadth. A short lip of the
 * handle at its front may be taken for a guard; it obstructs a sheath as a guard does. All lengths are chosen by eye;
 * the user may move or remove what is found.
 */
public final class GuardFinder {
    /** The handle's end as found by colours may be the guard's back or its front. */
    private static final double REACH_MM = 22;

    /** A protrusion that begins this far beyond the handle's end has blade behind it. */
    private static final double BEYOND_END_MM = 3;

    /** A lower one passes formed leather, which gives by 1.5 to 2.5 mm (common practice). */
    static final double LEAST_HEIGHT_MM = 2.5;

    static final double THICKEST_MM = 13;
    static final double THICK_PER_HEIGHT = 1.8;

    /** Both feet of a guard lie within this of its highest place. */
    private static final double FEET_MM = 14;

    /** A flank ends within this. */
    private static final double FLANK_MM = 8;

    /** A side that is as wide again within this distance is a blade before a choil, not before a guard. */
    private static final double CHOIL_MM = 24;

    /** The top of a flank is where the side has fallen by this share of the height. */
    private static final double TOP_PART = 0.15;

    private static final double STEP_MM = 0.1;

    private final OutlineSides sides;
    private final double buttX;
    private final double tipX;

    private GuardFinder(Polyline ring) {
        sides = new OutlineSides(ring);
        var xs = ring.points().stream().mapToDouble(Point::x).summaryStatistics();
        buttX = xs.getMin();
        tipX = xs.getMax();
    }

    /**
     * Returns the guard of an outline, its points on the outline; empty where none is found.
     *
     * @param ring closed, x along the knife towards the tip, in mm
     * @param handleEndX where the handle ends
     */
    public static Optional<Guard> find(Polyline ring, double handleEndX) {
        GuardFinder finder = new GuardFinder(ring);
        List<Protrusion> protrusions = Stream.of(true, false)
                .flatMap(above -> finder.protrusion(above, handleEndX).stream())
                .toList();
        if (protrusions.isEmpty()) {
            return Optional.empty();
        }
        Protrusion front = protrusions.stream()
                .max((a, b) -> Double.compare(a.frontX, b.frontX))
                .orElseThrow();
        Protrusion back = protrusions.stream()
                .min((a, b) -> Double.compare(a.backX, b.backX))
                .orElseThrow();
        return Optional.of(new Guard(finder.at(front.above, front.frontX), finder.at(back.above, back.backX)))
                .filter(guard -> guard.backMm() < handleEndX + BEYOND_END_MM);
    }

    /**
     * A protrusion of one side.
     *
     * @param backX x of its foot on the handle's side
     * @param frontX x of its foot on the blade's side
     */
    private record Protrusion(boolean above, double backX, double frontX) {}

    private Point at(boolean above, double x) {
        return new Point(x, above ? sides.upper(x) : sides.lower(x));
    }

    private Optional<Protrusion> protrusion(boolean above, double handleEndX) {
        DoubleUnaryOperator out = x -> sides.outward(above, x);
        double from = Math.max(buttX + FEET_MM, handleEndX - REACH_MM);
        double to = Math.min(tipX - FEET_MM, handleEndX + REACH_MM);
        Optional<Protrusion> best = Optional.empty();
        double highest = LEAST_HEIGHT_MM;
        for (double x = from; x <= to; x += STEP_MM) {
            double top = out.applyAsDouble(x);
            if (top < out.applyAsDouble(x - STEP_MM) || top < out.applyAsDouble(x + STEP_MM)) {
                continue;
            }
            double height = top - Math.max(least(out, x, x + FEET_MM), least(out, x - FEET_MM, x));
            if (height >= highest) {
                Optional<Protrusion> protrusion = compact(above, out, x, height);
                if (protrusion.isPresent()) {
                    best = protrusion;
                    highest = height;
                }
            }
        }
        return best;
    }

    private static double least(DoubleUnaryOperator out, double from, double to) {
        double least = Double.POSITIVE_INFINITY;
        for (double x = from; x <= to; x += STEP_MM) {
            least = Math.min(least, out.applyAsDouble(x));
        }
        return least;
    }

    /** Returns the protrusion whose highest place is at x; empty where it is too thick for its height. */
    private static Optional<Protrusion> compact(boolean above, DoubleUnaryOperator out, double x, double height) {
        double top = out.applyAsDouble(x);
        OptionalDouble front = below(out, x, FEET_MM, top - height / 2);
        OptionalDouble back = below(out, x, -FEET_MM, top - height / 2);
        if (front.isEmpty() || back.isEmpty()) {
            return Optional.empty();
        }
        double thick = front.getAsDouble() - back.getAsDouble();
        boolean risesAgain = most(out, front.getAsDouble() + STEP_MM, x + CHOIL_MM) > top - height / 2;
        if (risesAgain || thick > THICKEST_MM || thick > THICK_PER_HEIGHT * height) {
            return Optional.empty();
        }
        double level = top - TOP_PART * height;
        double backTop = below(out, x, -FEET_MM, level).orElseThrow() + STEP_MM;
        double frontTop = below(out, x, FEET_MM, level).orElseThrow() - STEP_MM;
        return Optional.of(new Protrusion(
                above, foot(out, backTop, backTop - FLANK_MM), foot(out, frontTop, frontTop + FLANK_MM)));
    }

    private static double most(DoubleUnaryOperator out, double from, double to) {
        double most = Double.NEGATIVE_INFINITY;
        for (double x = from; x <= to; x += STEP_MM) {
            most = Math.max(most, out.applyAsDouble(x));
        }
        return most;
    }

    /**
     * Returns where a side first falls to a level on the way from x, no farther than {@code reach}, a signed distance.
     */
    private static OptionalDouble below(DoubleUnaryOperator out, double x, double reach, double level) {
        for (double way = 0; way <= Math.abs(reach); way += STEP_MM) {
            double at = x + Math.copySign(way, reach);
            if (out.applyAsDouble(at) <= level) {
                return OptionalDouble.of(at);
            }
        }
        return OptionalDouble.empty();
    }

    /** Returns the place between the top of a flank and an end at which the side lies farthest below their chord. */
    private static double foot(DoubleUnaryOperator out, double topX, double endX) {
        Point top = new Point(topX, out.applyAsDouble(topX));
        Point chord = new Point(endX, out.applyAsDouble(endX)).minus(top);
        double sign = Math.signum(endX - topX);
        double foot = topX;
        double farthest = 0;
        for (double way = 0; way <= Math.abs(endX - topX); way += STEP_MM) {
            double x = topX + sign * way;
            double off = -sign * chord.unit().cross(new Point(x, out.applyAsDouble(x)).minus(top));
            if (off > farthest) {
                farthest = off;
                foot = x;
            }
        }
        return foot;
    }
}
