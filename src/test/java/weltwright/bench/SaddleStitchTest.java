package weltwright.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.knife.TestKnives;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

class SaddleStitchTest {

    /**
     * Common practice: the thread is about four times the seam where the stack is thin, tails beside. "About" is taken as
     * within a quarter, for stacks a little thinner and thicker than the pitch.
     */
    @ParameterizedTest
    @CsvSource({"4, 3.2", "4, 4", "3.5, 4", "5, 5.5"})
    void aThinStackTakesAboutFourTimesTheSeam(double pitchMm, double stackMm) {
        SaddleStitch stitch = new SaddleStitch("strap", 50, pitchMm, stackMm, 0);

        assertThat((stitch.threadMm() - SaddleStitch.TAILS_MM) / stitch.seamMm()).isBetween(3.0, 5.0);
    }

    /** Counted by hand: 10 stitches of 4 mm through 6 mm, 4 back: each half 14 × 10 mm, both 280 mm, tails 300 mm. */
    @Test
    void threadCountedByHand() {
        assertThat(new SaddleStitch("strap", 10, 4, 6, 4).threadMm()).isCloseTo(580, within(1e-9));
    }

    /** Two layers of leather and two of welt, each 3 mm, are 12 mm; a box of stitches closes on its first hole. */
    @Test
    void theStackIsAllThatTheNeedleGoesThrough() {
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), SheathSpec.standard(SheathKind.PANELS));
        BenchPlan plan = BenchPlan.of(pattern);

        SaddleStitch main = plan.thread().get(0);
        SaddleStitch loop = plan.thread().get(1);
        assertThat(main.stackMm()).isCloseTo(12, within(1e-9));
        assertThat(main.stitches()).isEqualTo(pattern.seams().get(0).holeCount() - 1);
        assertThat(loop.stackMm()).isCloseTo(6, within(1e-9));
        assertThat(loop.stitches()).isEqualTo(pattern.seams().get(1).holeCount());
    }
}
