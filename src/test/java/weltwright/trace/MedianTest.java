package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.FloatRange;
import net.jqwik.api.constraints.Size;

class MedianTest {
    @Property
    void isTheMiddleOneOfTheSortedValues(@ForAll @Size(min = 1, max = 60) float @FloatRange(max = 1e9f) [] values) {
        float[] sorted = values.clone();
        Arrays.sort(sorted);

        assertThat(Median.of(values)).isEqualTo(sorted[sorted.length / 2]);
    }
}
