package weltwright.sheath.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class FastenerTest {
    private static final double INCH = 25.4;

    static List<Fastener> usual() {
        return HardwareList.USUAL.fasteners();
    }

    /** Punches are sold by half millimetres and by 32nds of an inch: the smallest that lets the post through. */
    @ParameterizedTest
    @CsvSource({"4, 4", "3.1, 3.175", "3.9, 3.96875", "4.2, 4.5", "4.8, 5", "5, 5", "6.4, 6.5"})
    void theSmallestPunchThatTakesThePost(double postMm, double punchMm) {
        assertThat(rivet(postMm, 12).punchMm()).isCloseTo(punchMm, within(1e-9));
    }

    /** Common practice: each of the usual rivets but the largest, and each snap, is set in a strap of 5/8 in. */
    @ParameterizedTest
    @MethodSource("usual")
    void theMiddleOfAStrapTakesTheUsualSizes(Fastener fastener) {
        if (fastener.postMm() < 5) {
            assertThat(fastener.leastToEdgeMm()).isLessThanOrEqualTo(INCH * 5 / 8 / 2);
        }
    }

    /**
     * Riveted joints of machine design handbooks, from memory: pitch 3 d; margin for leather 2 d. A cap that is wider
     * than that needs its own room: at the edge it ends flush, and beside another it lies flat with 1 mm between.
     */
    @Test
    void eitherThePostOrTheCapSetsTheDistances() {
        assertThat(rivet(4, 10).leastToEdgeMm()).isEqualTo(8);
        assertThat(rivet(4, 10).leastApartMm()).isEqualTo(12);
        assertThat(rivet(2, 10).leastToEdgeMm()).isEqualTo(5);
        assertThat(rivet(2, 10).leastApartMm()).isEqualTo(11);
    }

    /** An eyelet carries no load, so only its caps need room: 1 mm from the edge and from each other. */
    @Test
    void anEyeletNeedsRoomForItsCapAlone() {
        Fastener eyelet = new Fastener("eyelet", Hardware.Kind.EYELET, 6, 10, 1, 3);
        assertThat(eyelet.leastToEdgeMm()).isEqualTo(6);
        assertThat(eyelet.leastApartMm()).isEqualTo(11);
    }

    /** A grip of 3 to 5 mm holds leather of just 3 and just 5 mm. */
    @ParameterizedTest
    @CsvSource({"2.9, false", "3, true", "4, true", "5, true", "5.1, false"})
    void theGripReachesFromTheThinnestToTheThickestLeather(double stackMm, boolean holds) {
        assertThat(new Fastener("rivet", Hardware.Kind.RIVET, 3, 9, 3, 5).grips(stackMm))
                .isEqualTo(holds);
    }

    /** A strap goes through a ring whose clear width is its own; of the rings that take it the narrowest is used. */
    @Test
    void theNarrowestRingThatTakesTheStrap() {
        Ring wide = new Ring("wide", 30, 4);
        Ring exact = new Ring("exact", 25, 4);
        Ring narrow = new Ring("narrow", 20, 3);
        HardwareList list = new HardwareList(List.of(), List.of(wide, exact, narrow));
        assertThat(list.ringFor(25)).isEqualTo(exact);
        assertThat(list.ringFor(25.1)).isEqualTo(wide);
        assertThat(exact.kind()).isEqualTo(Hardware.Kind.RING);
    }

    /** What the maker added to the list has the name that the maker gave it. */
    @Test
    void anOwnSizeKeepsItsName() {
        assertThat(new Ring("ring off the old bridle", 30, 4).words()).isEqualTo("ring off the old bridle");
        assertThat(HardwareList.USUAL.fasteners())
                .allSatisfy(fastener -> assertThat(fastener.words()).isEqualTo(fastener.name()));
    }

    private static Fastener rivet(double postMm, double capMm) {
        return new Fastener("rivet", Hardware.Kind.RIVET, postMm, capMm, 2, 8);
    }
}
