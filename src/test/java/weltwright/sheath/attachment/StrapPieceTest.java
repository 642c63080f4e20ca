package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.stitch.StitchBox;

class StrapPieceTest {
    private static final double INCH = 25.4;
    private static final StrapPiece STRAP = new StrapPiece(120, 24);
    private static final Fastener RIVET = rivet(3, 9);

    /** A rectangle and two half circles: 96 × 24 mm and π 12²; its arcs are drawn with chords. */
    @Test
    void itsEndsAreHalfRound() {
        Polyline outline = STRAP.outline();
        assertThat(outline.signedAreaMm2()).isCloseTo(96 * 24 + Math.PI * 144, within(2.0));
        assertThat(outline.points()).allSatisfy(p -> {
            double beyond = Math.max(0, Math.max(12 - p.y(), p.y() - 108));
            assertThat(Math.hypot(p.x(), beyond)).isCloseTo(12, within(1e-9));
        });
    }

    /** Common practice: rivets 3/4 in apart and 1/2 in from a strap's end; stout ones as far as their caps ask for. */
    @Test
    void rivetsAreSetAtTheUsualDistances() {
        assertThat(STRAP.rivets(RIVET, 20, 1)).containsExactly(new Point(0, 20), new Point(0, 20 + INCH * 3 / 4));
        assertThat(STRAP.rivets(RIVET, 60, -1)).containsExactly(new Point(0, 60), new Point(0, 60 - INCH * 3 / 4));
        assertThat(StrapPiece.beyondMm(RIVET)).isEqualTo(INCH / 2);
        Fastener stout = rivet(8, 25);
        assertThat(StrapPiece.rivetsApartMm(stout)).isGreaterThan(25);
        assertThat(StrapPiece.beyondMm(stout)).isEqualTo(stout.leastToEdgeMm());
        assertThat(StrapPiece.rivetHoles(STRAP.rivets(RIVET, 20, 1), RIVET))
                .hasSize(2)
                .allMatch(hole -> hole.diameterMm() == RIVET.punchMm() && hole.use() == Hole.Use.RIVET);
        assertThat(StrapPiece.capRoomMm(RIVET)).isGreaterThan(9.0 / 2);
    }

    /**
     * Stitches in the corners of a box keep their margin of 3 mm from the round end of a strap 40 mm wide: a corner is
     * then 20 mm less the margin from the centre of the round, or nearer, and half an inch from the end at least.
     */
    @Test
    void theCornersOfABoxKeepTheirMarginFromTheRoundEnd() {
        StitchBox wide = new StitchBox(4, 4, 4.5);
        double beyond = StrapPiece.beyondStitchMm(40, wide, 3);
        assertThat(beyond).isGreaterThanOrEqualTo(INCH / 2);
        assertThat(Math.hypot(20 - beyond, 9)).isLessThanOrEqualTo(20 - 3 + 1e-9);
        StitchBox full = new StitchBox(8, 4, 4);
        double tight = StrapPiece.beyondStitchMm(40, full, 3);
        assertThat(Math.hypot(20 - tight, 16)).as("just").isCloseTo(20 - 3, within(1e-9));
    }

    /** A mark across runs from side to side; the grain runs along, clear of the holes on the middle line. */
    @Test
    void marksRunAcrossAndAlong() {
        Mark fold = STRAP.across(50, Mark.Kind.FOLD, "fold");
        assertThat(fold.line().points()).containsExactly(new Point(-12, 50), new Point(12, 50));
        List<Point> grain = STRAP.grain(60).line().points();
        assertThat(grain.get(0).x()).isEqualTo(grain.get(1).x()).isBetween(4.0, 12.0);
        assertThat((grain.get(0).y() + grain.get(1).y()) / 2).isEqualTo(60);
        assertThat(grain.get(1).y()).isGreaterThan(grain.get(0).y());
    }

    private static Fastener rivet(double postMm, double capMm) {
        return new Fastener("rivet", Hardware.Kind.RIVET, postMm, capMm, 3, 9);
    }
}
