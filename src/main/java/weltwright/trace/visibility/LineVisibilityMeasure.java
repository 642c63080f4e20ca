package weltwright.trace.visibility;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import weltwright.geometry.fit.OrderStatistic;

/**
 * One way to see a printed line, and what it usually gives where a line is seen. Assumes that most of the lines that
 * are looked at are to be seen.
 *
 * @param of the measure of a look
 * @param usual what it gives at a line
 * @param noise how far it usually is from that
 */
record LineVisibilityMeasure<L>(ToDoubleFunction<L> of, double usual, double noise) {
    /** Bolder lines give more than the usual ones: up to this many times as much. */
    private static final double BOLDEST = 3;

    static <L> LineVisibilityMeasure<L> of(List<L> looks, ToDoubleFunction<L> of) {
        double[] seen = looks.stream().mapToDouble(of).toArray();
        double usual = OrderStatistic.quantile(seen, 0.7);
        OrderStatistic.median(seen);
        double[] off = Arrays.stream(seen)
                .skip(seen.length / 2)
                .map(greater -> Math.abs(greater - usual))
                .toArray();
        return new LineVisibilityMeasure<>(of, usual, OrderStatistic.median(off));
    }

    /** False where lines drown in noise. */
    boolean tells() {
        return usual > 4 * noise;
    }

    boolean isUsual(L look) {
        return Math.abs(of.applyAsDouble(look) - usual) < 0.35 * usual;
    }

    /** Whether it is less than noise makes it where a line is seen. */
    boolean isLess(L look) {
        return of.applyAsDouble(look) < usual - 4 * noise;
    }

    boolean isUsualOrBolder(L look) {
        double seen = of.applyAsDouble(look);
        return seen > 0.6 * usual && seen < BOLDEST * usual;
    }

    boolean isNone(L look) {
        return Math.abs(of.applyAsDouble(look)) < 0.2 * usual;
    }
}
