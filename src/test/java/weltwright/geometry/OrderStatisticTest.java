package weltwright.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

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
}
