package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Stitching;

/** The thread that a seam takes, against makers' rules and a count by hand. */
class SaddleStitchTest {
    /** Left hanging at both needles together. Common practice: a hand's breadth and a half each. */
    private static final double TAILS_MM = 300;

    /** A straight row through two layers that are together as thick as said. */
    private static Seam straight(int stitches, double pitchMm, double stackMm, int backStitches) {
        List<Point> holes = IntStream.rangeClosed(0, stitches)
                .mapToObj(i -> new Point(i * pitchMm, 0))
                .toList();
        Seam.Layer one = new Seam.Layer("one", LayerPart.WHOLE, stackMm / 2, 0, true, holes);
        Seam.Layer other = new Seam.Layer("other", LayerPart.WHOLE, stackMm / 2, 0, false, holes);
        return new Seam(
                Seam.Kind.WELT_SEAM,
                pitchMm,
                false,
                Stitching.USUAL.withBackStitches(backStitches),
                List.of(one, other));
    }

    /**
     * Common practice: the thread is about four times the seam where the stack is thin, tails beside. "About" is taken
     * as within a quarter, for stacks a little thinner and thicker than the pitch.
     */
    @ParameterizedTest
    @CsvSource({"4, 3.2", "4, 4", "3.5, 4", "5, 5.5"})
    void aThinStackTakesAboutFourTimesTheSeam(double pitchMm, double stackMm) {
        Seam seam = straight(50, pitchMm, stackMm, 0);

        assertThat((new SaddleStitch(seam).threadMm() - TAILS_MM) / (50 * pitchMm))
                .isBetween(3.0, 5.0);
    }

    /**
     * Counted by hand: 10 stitches of 4 mm through 6 mm and 2 back at each end: either needle 14 × 10 mm, and its tail.
     */
    @Test
    void threadCountedByHand() {
        assertThat(new SaddleStitch(straight(10, 4, 6, 2)).threadMm()).isCloseTo(2 * 140 + TAILS_MM, within(1e-9));
    }
}
