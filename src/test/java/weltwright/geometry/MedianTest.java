package weltwright.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.FloatRange;
import net.jqwik.api.constraints.Size;

class MedianTest {
    @Property
    void isTheMiddleOneOfTheSortedValues(
            @ForAll @Size(min = 1, max = 60) List<@FloatRange(min = 0, max = 1e9f) Float> values) {
        float[] array = new float[values.size()];
        for (int i = 0; i < array.length; i++) {
            array[i] = values.get(i);
        }

        assertThat(Median.of(array)).isEqualTo(values.stream().sorted().toList().get(array.length / 2));
    }

    @Property
    void ofFewItIsThatToo(
            @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = -1e9, max = 1e9) Double> values) {
        double[] array = values.stream().mapToDouble(Double::doubleValue).toArray();

        assertThat(Median.bySorting(array)).isEqualTo(values.stream().sorted().toList().get(array.length / 2));
    }
}
