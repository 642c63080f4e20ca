package weltwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;

class LengthFieldTest {
    private static final LengthField HANDLE = LengthField.of("handle thickness", 3, 60);
    private static final LengthField ANY = LengthField.of("length", 0, 10_000);
    private static final LengthField LEATHER = LengthField.ofLeather("leather thickness", 0.4, 6.5);

    /** 1 in = 25.4 mm exactly: international yard and pound agreement, 1959. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            19mm          | 19
            19 mm         | 19
            ` 19 MM `     | 19
            19            | 19
            19.5          | 19.5
            19,5 mm       | 19.5
            .5 in         | 12.7
            ,5 in         | 12.7
            5. mm         | 5
            1.9 cm        | 19
            1.5 in        | 38.1
            1.5in.        | 38.1
            1.5 inches    | 38.1
            3/8 in        | 9.525
            3/8"          | 9.525
            3 / 8 inch    | 9.525
            1 3/8"        | 34.925
            1-3/8 in      | 34.925
            1 - 3/8 in    | 34.925
            1–3/8 in      | 34.925
            1 3/8''       | 34.925
            1 3/8″        | 34.925
            1⅜ in         | 34.925
            1 ⅜ in        | 34.925
            ½"            | 12.7
            1/64 in       | 0.396875
            19 millimetres| 19
            ١٩٫٥ mm       | 19.5
            ۱۹٫۵ mm       | 19.5
            १९.५ mm       | 19.5
            ๑๙,๕          | 19.5
            １９．５ｍｍ    | 19.5
            ‏١٩‏ mm | 19
            """)
    void readsWhatMakersWrite(String typed, double mm) {
        assertThat(ANY.readMm(typed)).isCloseTo(mm, within(1e-12));
    }

    @Test
    void takesABareNumberInTheUnitThatTheCallerSays() {
        assertThat(ANY.readMm("1.5", LengthUnit.INCH)).isCloseTo(38.1, within(1e-12));
        assertThat(ANY.readMm("3/8", LengthUnit.INCH)).isCloseTo(9.525, within(1e-12));
        assertThat(ANY.readMm("3 mm", LengthUnit.INCH)).isEqualTo(3);
    }

    /**
     * An ounce of leather is 1/64 in. "7/8 oz" is 7 to 8 oz, 2.8 to 3.2 mm, as tables of leather weights have it
     * (common practice).
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            8 oz      | 3.175
            7/8 oz    | 2.9765625
            7-8 oz    | 2.9765625
            7–8oz     | 2.9765625
            8/10 oz   | 3.571875
            7.5 oz    | 2.9765625
            1/8 in    | 3.175
            3 mm      | 3
            3         | 3
            """)
    void readsLeather(String typed, double mm) {
        assertThat(LEATHER.readMm(typed)).isCloseTo(mm, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "7/0 in",
                "-3mm",
                "−3 mm",
                "abc",
                "1e9 mm",
                "1E9",
                "NaN",
                "Infinity",
                "mm",
                "3 furlongs",
                "1..5 mm",
                "1.5.2",
                "1,234.5 mm",
                "1.5/2 in",
                "1 2 mm",
                "3/8/2 in",
                "/8 in",
                "3/ in",
                "0x10 mm",
                "3 mm mm",
                "3 oz",
                "99999999999999999999 mm",
                "1 2/",
                "--3",
                "3-",
                "12 -3 mm",
                "mm 3",
                "\u0000"
            })
    void refusesWhatIsNoLengthAndNamesIt(String typed) {
        assertThatThrownBy(() -> HANDLE.readMm(typed))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("handle thickness")
                .hasMessageContaining(typed.equals("\u0000") ? "\" \"" : typed);
    }

    @Test
    void refusesNothingAtAll() {
        for (String typed : new String[] {null, "", "   "}) {
            assertThatThrownBy(() -> HANDLE.readMm(typed))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessage("The handle thickness is empty. Write it like 12.5 mm, 0.5 in or 1 3/8 in.");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"2.9 mm", "60.1 mm", "3 in", "0", "190 cm"})
    void refusesWhatIsOutOfBoundsAndSaysTheBounds(String typed) {
        assertThatThrownBy(() -> HANDLE.readMm(typed))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("handle thickness")
                .hasMessageContaining(typed)
                .hasMessageContaining("3 mm to 60 mm");
    }

    @Test
    void takesItsBoundsThemselves() {
        assertThat(HANDLE.readMm("3 mm")).isEqualTo(3);
        assertThat(HANDLE.readMm("60 mm")).isEqualTo(60);
    }

    @ParameterizedTest
    @ValueSource(strings = {"8/7 oz", "7/7 oz", "1 7/8 oz", "7/8/9 oz", "1/8 oz"})
    void refusesOuncesThatAreNoRange(String typed) {
        assertThatThrownBy(() -> LEATHER.readMm(typed))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(typed);
    }

    /** No tannery sells a side that runs from 1 to 8 oz (common practice), and 1/8 oz of leather is 0.05 mm. */
    @ParameterizedTest
    @CsvSource({"1/8 oz, 1/8 in", "3/16 oz, 3/16 in", "1/4 oz, 1/4 in", "8/64 oz, 8/64 in"})
    void takesAnInchsFractionForNoRangeOfOunces(String typed, String meant) {
        assertThatThrownBy(() -> LEATHER.readMm(typed))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(typed)
                .hasMessageEndingWith("Write " + meant + ".");
    }

    /** Of 7/8 an inch's fraction is out of bounds, of 1/8 the range of ounces is too wide. */
    @ParameterizedTest
    @CsvSource({"7/8, 7/8 oz", "1/8, 1/8 in", "6 - 8, ", "3/0, "})
    void asksForTheUnitOfABareFractionOfLeatherAndProposesWhatItTakes(String typed, String proposed) {
        assertThatThrownBy(() -> LEATHER.readMm(typed))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(typed)
                .hasMessageEndingWith(
                        proposed == null ? "Write it like 3 mm, 1/8 in or 7/8 oz." : "Write " + proposed + ".");
    }

    @Test
    void proposesBothWhereBothAreRight() {
        LengthField any = LengthField.ofLeather("leather thickness", 0, 100);
        assertThatThrownBy(() -> any.readMm("2/3")).hasMessageEndingWith("Write 2/3 oz or 2/3 in.");
    }

    private static final Pattern PROPOSED = Pattern.compile("[\\d/]+ (?:oz|in)");

    /**
     * Whatever fraction is typed: each proposal in the message is taken when it is typed, and none is the one refused.
     */
    @Property
    void takesWhatItProposes(
            @ForAll @IntRange(max = 70) int top, @ForAll @IntRange(max = 70) int bottom, @ForAll boolean inOunces) {
        String typed = top + "/" + bottom + (inOunces ? " oz" : "");
        try {
            assertThat(LEATHER.readMm(typed)).isBetween(0.4, 6.5);
        } catch (UserFacingException trouble) {
            String advice = trouble.getMessage().substring(trouble.getMessage().lastIndexOf(". ") + 2);
            Matcher proposed = PROPOSED.matcher(advice);
            while (proposed.find()) {
                assertThat(LEATHER.readMm(proposed.group())).isBetween(0.4, 6.5);
            }
        }
    }

    @Property
    void theBoundsThatItSaysAreTaken(
            @ForAll @DoubleRange(min = 0, max = 100) double least,
            @ForAll @DoubleRange(min = 100.5, max = 900) double most) {
        LengthField field = LengthField.of("length", least, most);
        Matcher bounds = Pattern.compile("(.*) to (.*) \\((.*) to (.*)\\)").matcher(field.bounds());
        assertThat(bounds.matches()).isTrue();
        assertThat(field.readMm(bounds.group(1))).isCloseTo(least, within(0.011));
        assertThat(field.readMm(bounds.group(2))).isCloseTo(most, within(0.011));
        assertThat(field.readMm(bounds.group(3))).isCloseTo(least, within(25.4 / 64 + 1e-9));
        assertThat(field.readMm(bounds.group(4))).isCloseTo(most, within(25.4 / 64 + 1e-9));
    }

    @Test
    void refusesNumbersFromElsewhereThatAreOutOfBounds() {
        assertThat(HANDLE.checkedMm(19)).isEqualTo(19);
        for (double mm : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1, 61}) {
            assertThatThrownBy(() -> HANDLE.checkedMm(mm))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("handle thickness");
        }
    }

    @Property
    void anyTextIsReadWithinTheBoundsOrRefusedInOneLine(@ForAll @StringLength(max = 60) String typed) {
        try {
            assertThat(HANDLE.readMm(typed)).isBetween(3 - 1e-9, 60 + 1e-9);
        } catch (UserFacingException trouble) {
            assertThat(trouble.getMessage()).contains("handle thickness").doesNotContain("\n", "\r");
        }
    }

    @Property
    void whatIsShownInSixtyFourthsReadsBackTheSame(@ForAll @IntRange(min = 0, max = 64 * 300) int sixtyFourths) {
        double mm = sixtyFourths * 25.4 / 64;
        assertThat(ANY.readMm(new Length(mm).inInches())).isCloseTo(mm, within(1e-9));
    }

    @Property
    void whatIsShownInMillimetresReadsBackTheSame(@ForAll @IntRange(min = 0, max = 1_000_000) int hundredths) {
        double mm = hundredths / 100.0;
        assertThat(ANY.readMm(new Length(mm).inMillimetres())).isEqualTo(mm);
    }
}
