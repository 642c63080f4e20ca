package weltwright.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.FloatRange;
import net.jqwik.api.constraints.Size;

class FloatMedianTest {
    @Property
    void isTheMiddleOneOfTheSortedValues(
            @ForAll @Size(min = 1, max = 60) List<@FloatRange(min = 0, max = 1e9f) Float> values) {
        float[] array = new float[values.size()];
        for (int i = 0; i < array.length; i++) {
            array[i] = values.get(i);
        }

        assertThat(FloatMedian.of(array))
                .isEqualTo(values.stream().sorted().toList().get(array.length / 2));
    }
}
