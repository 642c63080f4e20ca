package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.units.Length;
import weltwright.units.LengthField;

/** Whatever the program prints of a measure may be typed back, and means the same. */
class JobFieldsTest {
    private static final Pattern BOUNDS = Pattern.compile("(.*) to (.*) \\((.*) to (.*)\\)");

    static Stream<LengthField> lengths() {
        return Stream.of(JobFields.class.getFields())
                .filter(field -> Modifier.isStatic(field.getModifiers()) && field.getType() == LengthField.class)
                .map(JobFieldsTest::value);
    }

    private static LengthField value(Field field) {
        try {
            return (LengthField) field.get(null);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("lengths")
    void takesEachBoundThatItsMessageNames(LengthField field) {
        Matcher bounds = BOUNDS.matcher(field.bounds());
        assertThat(bounds.matches()).isTrue();
        for (int k = 1; k <= 4; k++) {
            double mm = field.readMm(bounds.group(k));
            assertThat(mm).isCloseTo(k % 2 == 1 ? field.leastMm() : field.greatestMm(), within(25.4 / 64 + 1e-9));
        }
    }

    @ParameterizedTest
    @MethodSource("lengths")
    void readsBackWhatIsShown(LengthField field) {
        for (int i = 0; i <= 1000; i++) {
            double mm = field.leastMm() + i * (field.greatestMm() - field.leastMm()) / 1000;
            Length shown = new Length(mm);
            assertThat(LengthField.of("any", 0, 10_000).readMm(shown.inMillimetres()))
                    .isCloseTo(mm, within(0.005 + 1e-9));
            assertThat(LengthField.of("any", 0, 10_000).readMm(shown.inInches()))
                    .isCloseTo(mm, within(25.4 / 128 + 1e-9));
            assertThat(field.readMm(new Length(round(mm, field)).inMillimetres()))
                    .isEqualTo(round(mm, field));
        }
    }

    /** To a hundredth of a millimetre, within the bounds. */
    private static double round(double mm, LengthField field) {
        double rounded = Math.round(mm * 100) / 100.0;
        return Math.min(Math.max(rounded, field.leastMm()), field.greatestMm());
    }

    /** As the bench card prints a pitch: "4.23 mm, 6.0 to the inch". */
    @Property
    void readsBackBothWaysToTellAPitch(@ForAll @DoubleRange(min = 2.3, max = 10) double mm) {
        assertThat(JobFields.readPitchMm(String.format(Locale.ROOT, "%.1f to the inch", 25.4 / mm)))
                .isCloseTo(mm, within(0.2));
        assertThat(25.4 / JobFields.readPitchMm(String.format(Locale.ROOT, "%.1f to the inch", 25.4 / mm)))
                .isCloseTo(25.4 / mm, within(0.051));
        assertThat(JobFields.readPitchMm(String.format(Locale.ROOT, "%.1f spi", 25.4 / mm)))
                .isEqualTo(JobFields.readPitchMm(String.format(Locale.ROOT, "%.1f to the inch", 25.4 / mm)));
        assertThat(JobFields.readPitchMm(String.format(Locale.ROOT, "%.2f mm", mm)))
                .isCloseTo(mm, within(0.0051));
    }
}
