package weltwright.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class OrderStatisticTest {
    /** Few different values, so that many are equal. */
    @Property
    void isTheOneOfItsRankAmongTheSortedValuesWhichItParts(
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -9, max = 9) Integer> values,
            @ForAll @DoubleRange(max = 0.99) double part) {
        double[] sorted = values.stream().mapToDouble(v -> v).sorted().toArray();
        double[] array = values.stream().mapToDouble(v -> v).toArray();
        int rank = (int) (part * array.length);

        assertThat(OrderStatistic.of(array, rank)).isEqualTo(sorted[rank]);
        assertThat(Arrays.stream(array, 0, rank).sorted().toArray()).isEqualTo(Arrays.copyOf(sorted, rank));
    }

    /** The definition, counted out. */
    @Property
    void noLesserValueThanTheQuantileIsKeptWithinBySuchAPart(
            @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -9, max = 9) Integer> values,
            @ForAll @DoubleRange(min = 0.01, max = 1) double part) {
        double[] array = values.stream().mapToDouble(v -> v).toArray();
        double quantile = OrderStatistic.quantile(array, part);

        assertThat(values.stream().filter(v -> v <= quantile).count() / (double) values.size())
                .isGreaterThanOrEqualTo(part);
        assertThat(values.stream().filter(v -> v < quantile).count() / (double) values.size())
                .isLessThan(part);
        assertThat(values).anyMatch(v -> v == quantile);
    }

    /** Of a hundred values 95 keep within the 95th, of twenty the 19th. */
    @Test
    void isTheNinetyFifthOfAHundred() {
        assertThat(OrderStatistic.quantile(
                        IntStream.rangeClosed(1, 100).asDoubleStream().toArray(), 0.95))
                .isEqualTo(95);
        assertThat(OrderStatistic.quantile(
                        IntStream.rangeClosed(1, 20).asDoubleStream().toArray(), 0.95))
                .isEqualTo(19);
    }
}
