package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * Straps 25 mm wide of leather of 3 mm with K 0.5, a ring of 26 mm inside with a wire of 4 mm, a belt of 38 × 4 mm with
 * 10 mm of play. Common practice: rivets 3/4 in apart and 1/2 in from a strap's end; 9 mm of leather take a rivet with
 * a cap of 9 mm. Rivets are 8 mm from the ring (chosen by eye). All lengths are worked by hand.
 */
class RingHangerTest {
    private static final double INCH = 25.4;
    private static final double APART = INCH * 3 / 4;
    private static final double BEYOND = INCH / 2;

    /** Half a turn on the wire's 2 mm, or half the belt's thickness, and half the leather's thickness. */
    private static final double HALF_TURN = Math.PI * 3.5;

    /** The rivets are 8 mm off the middle of the wire on either leg. */
    private static final double ROUND_RING = 2 * 8 + HALF_TURN;

    /** From the upper rivet to the inside of the fold: past the short end, then the belt and its play. */
    private static final double OPENING = BEYOND + 38 + 10;

    private static final SheathSpec SPEC = SheathSpec.standard(SheathKind.PANELS);

    private final RingHanger hanger = new RingHanger(SPEC, TestBacks.ROOMY);

    /** Down round the ring, up, over the belt, and down along it and aslant to the rivets. */
    @Test
    void theBeltStrapIsAsLongAsItsWay() {
        double overBelt = OPENING - 2 + HALF_TURN + 36 + Math.hypot(OPENING - 2 - 36, 4);
        double length = BEYOND + APART + ROUND_RING + APART + overBelt + APART + BEYOND;
        Piece strap = piece(Piece.Kind.BELT_STRAP);
        assertThat(strap.outline().polygon().getEnvelopeInternal().getHeight()).isCloseTo(length, within(1e-9));
    }

    /** Folded round the ring, the holes of the short end fall on those of the front. */
    @Test
    void itsFoldsAreInTheMiddleOfTheRingAndOfTheBelt() {
        List<Double> holes = piece(Piece.Kind.BELT_STRAP).holes().stream()
                .map(hole -> hole.centre().y())
                .sorted()
                .toList();
        List<Double> folds = ys(Mark.Kind.FOLD);

        assertThat((holes.get(1) + holes.get(2)) / 2).isCloseTo(folds.get(0), within(1e-9));
        assertThat((holes.get(0) + holes.get(3)) / 2).isCloseTo(folds.get(0), within(1e-9));
        assertThat(holes.get(2) - holes.get(1)).isCloseTo(ROUND_RING, within(1e-9));
        assertThat(folds.get(2) - holes.get(3)).isCloseTo(OPENING - 2 + HALF_TURN / 2, within(1e-9));
        assertThat(ys(Mark.Kind.GRAIN))
                .as("between rivets and fold")
                .allMatch(y -> y > holes.get(3) && y < folds.get(2));
    }

    /**
     * The strap for the ring has its rivets below the throat by the cap's width and 2 mm, and 8 mm of leather above it
     * before the wire. On the wire stands the ring, in it the belt strap with its rivets.
     */
    @Test
    void itHangsByRingStrapRingAndBeltStrap() {
        double toWire = 8 + 4;
        assertThat(hanger.aboveThroatMm()).isCloseTo(toWire + 26 + 8 + 2 + APART + OPENING, within(1e-9));
        assertThat(hanger.widthMm()).isEqualTo(25);
        double opening = 9 + 2 + toWire;
        assertThat(piece(Piece.Kind.RING_STRAP)
                        .outline()
                        .polygon()
                        .getEnvelopeInternal()
                        .getHeight())
                .isCloseTo(2 * (BEYOND + APART) + opening - 2 + HALF_TURN + Math.hypot(opening - 2, 4), within(1e-9));
    }

    /** What is on the back is the ring's strap, upright even where the sheath is tilted: the ring turns. */
    @Test
    void theRingStrapIsRivetedUprightToTheBack() {
        RingHanger tilted = new RingHanger(SPEC, TestBacks.leaning(0.3, -40, 40));
        List<Point> holes = tilted.holesInBack().stream().map(Hole::centre).toList();
        assertThat(holes).hasSize(2).allMatch(hole -> hole.y() == 0);
        assertThat(holes.get(1).x() - holes.get(0).x()).isCloseTo(APART, within(1e-9));
        assertThat(tilted.marksOnBack()).extracting(Mark::kind).containsExactly(Mark.Kind.PLACE);
        assertThat(tilted.rivetCover(List.of(new Point(0, -60), new Point(60, -60)), 8)
                        .orElseThrow()
                        .rivets())
                .isEqualTo(holes);
    }

    /** Three layers of the strap are as thick as the rivet can hold. */
    @Test
    void theRivetGripsTheStrapThreeTimes() {
        PlacedHardware rivets = hanger.fastenings(new PieceOrientation(false), "back").stream()
                .filter(fastening -> fastening.purpose() == PlacedHardware.Purpose.BELT_STRAP_RIVETS)
                .findFirst()
                .orElseThrow();
        assertThat(rivets.stackMm()).isEqualTo(3 * 3);
        assertThat(((Fastener) rivets.hardware()).grips(rivets.stackMm())).isTrue();
    }

    private Piece piece(Piece.Kind kind) {
        return hanger.pieces().stream()
                .filter(piece -> piece.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private List<Double> ys(Mark.Kind kind) {
        return piece(Piece.Kind.BELT_STRAP).marks().stream()
                .filter(mark -> mark.kind() == kind)
                .flatMap(mark -> mark.line().points().stream())
                .map(Point::y)
                .toList();
    }
}
