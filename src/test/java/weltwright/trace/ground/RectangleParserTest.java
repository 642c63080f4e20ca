package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;

class RectangleParserTest {
    private static final String AT = " at 310,402 2811,390.5 2850,3900 280,3911";

    @ParameterizedTest
    @CsvSource({
        "210x297mm, 210, 297",
        "210mm x 297 mm, 210, 297",
        "8.5x11in, 215.9, 279.4",
        "21cm x 297mm, 210, 297",
        "8 1/2 x 11 in, 215.9, 279.4"
    })
    void readsSizesInAnyUnit(String size, double widthMm, double heightMm) {
        GroundChoice.Rectangle rectangle = RectangleParser.read(size + AT);
        assertThat(rectangle.widthMm()).isCloseTo(widthMm, within(1e-9));
        assertThat(rectangle.heightMm()).isCloseTo(heightMm, within(1e-9));
        assertThat(rectangle.corners())
                .containsExactly(
                        new Point(310, 402), new Point(2811, 390.5), new Point(2850, 3900), new Point(280, 3911));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "210x297mm | The four corners of the rectangle are missing.",
                "210mm at 1,2 3,4 5,6 7,8 | \"210mm\" is no size of a rectangle.",
                "210x297mm at 1,2 3,4 5,6 | A rectangle has four corners, and 3 are given.",
                "210x297mm at 1,2 3,4 five,6 7,8 | \"five,6\" is no place in a photo."
            })
    void saysWhatIsWrong(String said, String message) {
        assertThatThrownBy(() -> RectangleParser.read(said))
                .isInstanceOf(UserFacingException.class)
                .hasMessageStartingWith(message);
    }

    /** What a choice is written as is read back to the same. */
    @Test
    void readsWhatIsWritten() {
        GroundChoice rectangle = RectangleParser.read("210x297mm" + AT);
        assertThat(GroundChoice.parse(rectangle.words())).isEqualTo(rectangle);
    }
}
