package weltwright.trace.visibility;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import weltwright.geometry.fit.OrderStatistic;

/**
 * A scalar measure of the visibility of a printed line, with its typical value and noise where lines are visible.
 * Assumes that most of the lines sampled are visible. The parts of the typical value that separate the cases are chosen
 * by eye.
 *
 * @param of computes the measure of a sample
 * @param typical value at a visible line
 * @param noise median deviation from it
 */
record LineVisibilityMeasure<L>(ToDoubleFunction<L> of, double typical, double noise) {
    /** Quantile of all samples that is taken for the typical value: most lines are visible, some hidden; by eye. */
    private static final double TYPICAL_QUANTILE = 0.7;

    /**
     * Deviation that noise seldom makes, in medians of the deviation of the greater half of the samples. Of normal
     * noise that is 1.5 standard deviations where all lines are visible, 1.7 where a fifth are hidden.
     */
    private static final double SIGNIFICANT = 4;

    /** A typical line deviates by less than this part of the typical value; chosen by eye. */
    private static final double TYPICAL_RANGE = 0.35;

    /** Least measure of a visible line where lines of several widths are printed, as a part of the typical value. */
    private static final double FAINTEST = 0.6;

    /** Greatest such measure: every fifth or tenth line of a mat is bolder; chosen by eye. */
    private static final double BOLDEST = 3;

    /** Greatest measure, as a part of the typical value, where a line is hidden; chosen by eye. */
    private static final double ABSENT = 0.2;

    static <L> LineVisibilityMeasure<L> of(List<L> samples, ToDoubleFunction<L> of) {
        double[] seen = samples.stream().mapToDouble(of).toArray();
        double typical = OrderStatistic.quantile(seen, TYPICAL_QUANTILE);
        OrderStatistic.median(seen);
        double[] off = Arrays.stream(seen)
                .skip(seen.length / 2)
                .map(greater -> Math.abs(greater - typical))
                .toArray();
        return new LineVisibilityMeasure<>(of, typical, OrderStatistic.median(off));
    }

    /** Returns the median of each of the three channels of some samples. */
    static <L> double[] channelMedians(List<L> samples, Function<L, double[]> channels) {
        return IntStream.range(0, 3)
                .mapToDouble(k -> OrderStatistic.median(samples.stream()
                        .mapToDouble(sample -> channels.apply(sample)[k])
                        .toArray()))
                .toArray();
    }

    /**
     * Returns false where lines do not stand out from noise, which is taken to be the same, in grey levels, at any
     * brightness.
     *
     * @param brightness of the ground there, as a part of that of the ground as a whole
     */
    boolean isReliable(double brightness) {
        return typical * brightness > SIGNIFICANT * noise;
    }

    boolean isTypical(L sample) {
        return Math.abs(of.applyAsDouble(sample) - typical) < TYPICAL_RANGE * typical;
    }

    /** Returns whether the measure is lower than noise would make it at a visible line. */
    boolean isSignificantlyLower(L sample) {
        return of.applyAsDouble(sample) < typical - SIGNIFICANT * noise;
    }

    boolean isTypicalOrBolder(L sample) {
        double seen = of.applyAsDouble(sample);
        return seen > FAINTEST * typical && seen < BOLDEST * typical;
    }

    boolean isAbsent(L sample) {
        return Math.abs(of.applyAsDouble(sample)) < ABSENT * typical;
    }
}
