package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.Leather;

/** Lengths of a strip laid round a belt or a wire, worked by hand; leather of 3 mm with K 0.5. */
class FoldedLoopTest {
    private static final Leather LEATHER = new Leather(3, 0.5, 0, Leather.Bulge.SHARED);

    /** Up 18 mm to the middle of a wire of 4 mm, half round it on 2 + 1.5 mm, and back aslant to 4 mm beside. */
    @Test
    void roundAWire() {
        FoldedLoop loop = FoldedLoop.wire(20, 4, LEATHER);
        assertThat(loop.lengthMm()).isCloseTo(18 + Math.PI * 3.5 + Math.hypot(18, 4), within(1e-9));
        assertThat(loop.foldMm()).isCloseTo(18 + Math.PI * 3.5 / 2, within(1e-9));
    }

    /** A belt of 38 × 4 mm with 10 mm of play: down along its other side for 36 mm, then the last 10 mm aslant. */
    @Test
    void roundABelt() {
        FoldedLoop loop = FoldedLoop.belt(new BeltAttachment(BeltAttachment.Style.TAIL, 38, 4), LEATHER);
        assertThat(loop.openingMm()).isEqualTo(48);
        assertThat(loop.lengthMm()).isCloseTo(46 + Math.PI * 3.5 + 36 + Math.hypot(10, 4), within(1e-9));
    }

    /** What is added lies below the belt, once up and once aslant down. */
    @Test
    void aLongerLoopIsLongerBelowTheBelt() {
        FoldedLoop loop = FoldedLoop.belt(new BeltAttachment(BeltAttachment.Style.TAIL, 38, 4), LEATHER);
        FoldedLoop longer = loop.longerBy(12);
        assertThat(longer.lengthMm() - loop.lengthMm())
                .isCloseTo(12 + Math.hypot(22, 4) - Math.hypot(10, 4), within(1e-9));
        assertThat(longer.foldMm() - loop.foldMm()).isCloseTo(12, within(1e-9));
    }

    /** Round something without thickness a strip of no thickness goes up and down, and no more. */
    @Test
    void aStripOverNothingIsTwiceItsOpening() {
        FoldedLoop loop = FoldedLoop.wire(20, 0, LEATHER.withNeutralFactor(0));
        assertThat(loop.lengthMm()).isCloseTo(40, within(1e-9));
    }
}
