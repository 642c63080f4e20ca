package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalInt;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.sheath.pattern.WeltStack.Sheets;
import weltwright.sheath.spec.WeltSpec;

class WeltStackTest {

    /** 3.2 + 1.6 = 4.8 mm is the thinnest that two thicknesses make over 4.5 mm, and two layers the fewest. */
    @Test
    void twoThicknessesComeNearerThanOne() {
        WeltStack stack = WeltStack.of(4.5, choice(OptionalInt.empty(), List.of(1.6, 3.2)), 3);

        assertThat(stack.sheets()).containsExactly(new Sheets(1, 3.2), new Sheets(1, 1.6));
        assertThat(stack.thicknessMm()).isCloseTo(4.8, within(1e-9));
    }

    /** 4 + 1 + 1 and 3 + 3 are both 6 mm. */
    @Test
    void ofTwoStacksAsThickTheOneOfFewerLayersIsTaken() {
        assertThat(WeltStack.of(6, choice(OptionalInt.empty(), List.of(4.0, 3.0, 1.0)), 3)
                        .sheets())
                .containsExactly(new Sheets(2, 3));
    }

    /** A millimetre's thousandth is less than leather is even. Common practice. */
    @Test
    void leathersOfAboutOneThicknessAreOne() {
        assertThat(WeltStack.of(5, choice(OptionalInt.empty(), List.of(3.0, 2.9995)), 3)
                        .sheets())
                .containsExactly(new Sheets(2, 3));
    }

    @Test
    void withoutOtherLeatherTheSheathsOwnIsTaken() {
        assertThat(WeltStack.of(3.5, choice(OptionalInt.empty(), List.of()), 3).sheets())
                .containsExactly(new Sheets(2, 3));
    }

    @Test
    void aNumberOfLayersIsKeptTo() {
        assertThat(WeltStack.of(3, choice(OptionalInt.of(1), List.of(2.0, 2.5)), 3)
                        .sheets())
                .as("too thin, so the thickest")
                .containsExactly(new Sheets(1, 2.5));
        assertThat(WeltStack.of(3, choice(OptionalInt.of(2), List.of(2.0, 1.5)), 3)
                        .sheets())
                .as("thick enough, so the thinnest")
                .containsExactly(new Sheets(2, 1.5));
    }

    /** Over 3.5 mm two layers of 3 mm make 6, one of them and one of 1 mm make 4, which common practice would lay. */
    @Test
    void aNearerStackIsNamed() {
        WeltSpec own = choice(OptionalInt.empty(), List.of());
        assertThat(WeltStack.of(3.5, own, 3).nearer(3.5, own, 3).orElseThrow().sheets())
                .containsExactly(new Sheets(1, 3), new Sheets(1, 1));
        assertThat(WeltStack.of(2.9, own, 3).nearer(2.9, own, 3))
                .as("near enough")
                .isEmpty();
        WeltSpec one = choice(OptionalInt.of(1), List.of());
        assertThat(WeltStack.of(4.2, one, 3).nearer(4.2, one, 3).orElseThrow().sheets())
                .as("beside one layer that is too thin")
                .containsExactly(new Sheets(1, 3), new Sheets(1, 1.6));
    }

    /** What is named beside a stack is as thick as the blade, and nearer to it. */
    @Property(tries = 200)
    void whatIsNamedComesNearerFromAbove(
            @ForAll @DoubleRange(min = 1, max = 8) double blade, @ForAll @DoubleRange(min = 1, max = 4) double own) {
        WeltSpec choice = choice(OptionalInt.empty(), List.of());
        WeltStack stack = WeltStack.of(blade, choice, own);
        stack.nearer(blade, choice, own)
                .ifPresent(
                        nearer -> assertThat(nearer.thicknessMm()).isBetween(blade - 1e-6, stack.thicknessMm() - 0.5));
    }

    /** Common practice: as thick as the blade or thicker; and one layer of it less would not do. */
    @Property(tries = 200)
    void itIsAsThickAsTheBladeAndNoLayerTooMany(
            @ForAll @DoubleRange(min = 1, max = 8) double blade,
            @ForAll @Size(min = 1, max = 3) List<@DoubleRange(min = 1, max = 4) Double> leathers) {
        WeltStack stack = WeltStack.of(blade, choice(OptionalInt.empty(), leathers), 3);

        assertThat(stack.thicknessMm()).isGreaterThanOrEqualTo(blade - 1e-6);
        for (Sheets sheets : stack.sheets()) {
            assertThat(stack.thicknessMm() - sheets.thicknessMm()).isLessThan(blade);
        }
    }

    /** Each stack of two thicknesses tried one by one: none that is thick enough is thinner, or as thin of fewer. */
    @Property(tries = 200)
    void noOtherStackIsBetter(
            @ForAll @DoubleRange(min = 1, max = 9) double blade,
            @ForAll @IntRange(min = 8, max = 40) int thin,
            @ForAll @IntRange(min = 8, max = 40) int thick) {
        double a = thin / 10.0;
        double b = thick / 10.0;
        WeltStack stack = WeltStack.of(blade, choice(OptionalInt.empty(), List.of(a, b)), 3);
        for (int i = 0; i <= 12; i++) {
            for (int k = 0; i + k <= 12; k++) {
                double mm = i * a + k * b;
                if (mm >= blade) {
                    assertThat(mm).isGreaterThan(stack.thicknessMm() - 1e-6);
                    assertThat(Math.abs(mm - stack.thicknessMm()) > 1e-6 || i + k >= stack.layers())
                            .as("%s of %s and %s of %s", i, a, k, b)
                            .isTrue();
                }
            }
        }
    }

    /** Two layers of leather as thick as the blade, whichever leather is named first, beat three of a thinner one. */
    @Test
    void ofEqualStacksThatOfFewestLayersIsLaid() {
        for (List<Double> leathers : List.of(List.of(2.0, 3.0), List.of(3.0, 2.0))) {
            assertThat(WeltStack.of(6, choice(OptionalInt.empty(), leathers), 3).sheets())
                    .containsExactly(new Sheets(2, 3));
        }
    }

    /** Paper-thin leather would need more layers than anyone sews. */
    @Test
    void leatherTooThinForTheBladeIsRefused() {
        WeltSpec thin = choice(OptionalInt.empty(), List.of(1.0));
        assertThat(WeltStack.of(12, thin, 3).layers()).isEqualTo(12);
        assertThatThrownBy(() -> WeltStack.of(12.5, thin, 3))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("thicker leather");
    }

    /** A label of two leathers tells them apart, and has no more digits than that takes. */
    @Test
    void thicknessesAreToldApartWithFewestDigits() {
        WeltStack stack = new WeltStack(List.of(new Sheets(1, 3), new Sheets(1, 1.18), new Sheets(1, 1.16)));
        assertThat(stack.sheets()).extracting(stack::thickness).containsExactly("3.0", "1.18", "1.16");
    }

    private static WeltSpec choice(OptionalInt layers, List<Double> leathers) {
        return new WeltSpec(layers, 4, leathers, false);
    }
}
