package weltwright.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.sheath.Advice;
import weltwright.sheath.Seam;

class AdviceWordsTest {

    static Class<?>[] kinds() {
        return Advice.class.getPermittedSubclasses();
    }

    /** A kind that somebody adds and does not word would end in an exception before the maker's eyes. */
    @ParameterizedTest
    @MethodSource("kinds")
    void everyKindHasASentence(Class<?> kind) throws ReflectiveOperationException {
        Class<?>[] types = Arrays.stream(kind.getRecordComponents())
                .map(RecordComponent::getType)
                .toArray(Class<?>[]::new);
        Constructor<?> constructor = kind.getDeclaredConstructor(types);
        Advice advice = (Advice) constructor.newInstance(
                Arrays.stream(types).map(AdviceWordsTest::any).toArray());

        assertThat(AdviceWords.sentence(advice)).matches("[A-Z].*[^ ]\\.").doesNotContain("null");
        assertThat(AdviceWords.line(advice)).startsWith(AdviceWords.word(advice.severity()) + ": ");
    }

    private static Object any(Class<?> type) {
        if (type == double.class) {
            return 12.3;
        }
        if (type == int.class) {
            return 2;
        }
        if (type == Seam.Pitch.class) {
            return new Seam.Pitch(4, 3.9, 4.3);
        }
        if (type == boolean.class) {
            return true;
        }
        return type.isEnum() ? type.getEnumConstants()[0] : "welt seam";
    }
}
