package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Stitching;

class SeamToolsTest {
    private static SeamTools tools(double pitchMm, double stackMm) {
        return tools(pitchMm, stackMm, Stitching.USUAL);
    }

    private static SeamTools tools(double pitchMm, double stackMm, Stitching stitching) {
        List<Point> holes = List.of(new Point(0, 0), new Point(pitchMm, 0));
        return new SeamTools(new Seam(
                Seam.Kind.WELT_SEAM,
                pitchMm,
                false,
                stitching,
                List.of(
                        new Seam.Layer("face", LayerPart.WHOLE, stackMm / 2, 0, true, holes),
                        new Seam.Layer("back", LayerPart.WHOLE, stackMm / 2, 0, false, holes))));
    }

    /** What goes with irons of 3, 4 and 5 mm; common practice. */
    @ParameterizedTest
    @CsvSource({"3, 0.6, no. 4", "3.38, 0.6, no. 4", "4, 0.8, no. 2", "4.2, 0.8, no. 2", "5, 1.0, no. 1"})
    void threadAndNeedleGoWithThePitch(double pitchMm, double threadMm, String needle) {
        SeamTools tools = tools(pitchMm, 9);

        assertThat(tools.threadMm()).isEqualTo(threadMm);
        assertThat(tools.needle()).isEqualTo(needle);
    }

    /** What the maker has chosen goes before the rule, and needle and awl follow it. */
    @Test
    void theChosenThreadIsTaken() {
        SeamTools tools = tools(4, 9, Stitching.USUAL.withThreadMm(OptionalDouble.of(1)));

        assertThat(tools.threadMm()).isEqualTo(1);
        assertThat(tools.needle()).isEqualTo(tools(5, 9).needle());
        assertThat(tools.awlWidthMm()).isEqualTo(tools(5, 9).awlWidthMm());
    }

    /** Two threads must pass the hole, and the blade must come out on the other side. */
    @ParameterizedTest
    @CsvSource({"3, 6", "4, 12", "5, 20", "2, 3"})
    void theAwlPassesTheStackAndTheHoleTwoThreads(double pitchMm, double stackMm) {
        SeamTools tools = tools(pitchMm, stackMm);

        assertThat(tools.awlWidthMm()).isGreaterThan(2 * tools.threadMm());
        assertThat(tools.awlLengthMm()).isGreaterThanOrEqualTo(stackMm + 10);
    }
}
