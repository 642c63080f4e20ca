package weltwright.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.knife.CrossSection;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.WeltStack;

class AdviceWordingTest {

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
                Arrays.stream(types).map(AdviceWordingTest::any).toArray());

        assertThat(AdviceWording.sentence(advice)).matches("[A-Z].*[^ ]\\.").doesNotContain("null");
        assertThat(AdviceWording.line(advice)).startsWith(AdviceWording.word(advice.severity()) + ": ");
    }

    /** A welt of 6 mm over a blade of 3.5 mm, and what a maker would say of it. */
    @Test
    void theNearerWeltIsNamedInWords() {
        WeltStack two = new WeltStack(List.of(new WeltStack.Sheets(2, 3)));
        WeltStack both = new WeltStack(List.of(new WeltStack.Sheets(1, 3), new WeltStack.Sheets(1, 1)));

        assertThat(AdviceWording.sentence(new Advice.WeltThickness(two, 3.5, Optional.of(both))))
                .isEqualTo("The welt is two layers of 3 mm, 6.0 mm in all; the blade is 3.5 mm thick."
                        + " One layer of 3 mm and one of 1 mm would come nearer, with 4.0 mm.");
    }

    /** Two leathers that differ by less than a tenth, which their maker told apart. */
    @Test
    void leathersNearlyAlikeAreToldApart() {
        WeltStack stack = new WeltStack(List.of(new WeltStack.Sheets(1, 1.16), new WeltStack.Sheets(2, 1.18)));

        assertThat(AdviceWording.sentence(new Advice.WeltThickness(stack, 3.5, Optional.empty())))
                .startsWith("The welt is one layer of 1.16 mm and two of 1.18 mm, 3.5 mm in all");
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
        if (type == List.class) {
            return List.of(DrawCheck.Side.EDGE);
        }
        if (type == WeltStack.class) {
            return new WeltStack(List.of(new WeltStack.Sheets(1, 3), new WeltStack.Sheets(2, 1.6)));
        }
        if (type == Optional.class) {
            return Optional.empty();
        }
        if (type == Retention.Narrow.class) {
            return new Retention.Narrow(CrossSection.Part.HANDLE, -20, -4, 1.4, List.of());
        }
        return type.isEnum() ? type.getEnumConstants()[0] : "welt seam";
    }
}
