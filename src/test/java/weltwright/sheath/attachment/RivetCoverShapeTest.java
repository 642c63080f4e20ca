package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.geometry.Point;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Piece;

/**
 * Common practice: leather of 1 mm, glued down for 6 mm round the caps, at least for 2 mm, and skived to nothing over
 * that. Two rivets with caps of 9 mm, 20 mm apart.
 */
class RivetCoverShapeTest {
    private static final Fastener RIVET = new Fastener("rivet", Hardware.Kind.RIVET, 3, 9, 3, 9);
    private static final List<Point> TWO = List.of(new Point(30, 0), new Point(50, 0));
    private static final List<Point> FAR = List.of(new Point(30, -100), new Point(50, -100));

    @Test
    void itReachesSixMillimetresPastTheCaps() {
        RivetCover cover = RivetCover.over(TWO, RIVET, 0, FAR, 8).orElseThrow();
        assertThat(cover.radiusMm()).isEqualTo(4.5 + 6);
        Piece piece = cover.piece();
        double half = 10.5;
        assertThat(piece.outline().polygon().getArea()).isCloseTo(20 * 2 * half + Math.PI * half * half, within(2.0));
        assertThat(piece.outline().polygon().getEnvelopeInternal().getHeight()).isCloseTo(20 + 2 * half, within(0.05));
        assertThat(piece.outline().polygon().getEnvelopeInternal().getWidth()).isCloseTo(2 * half, within(0.05));
    }

    /** It ends 1 mm before the throat and before the welt; where less than 2 mm would be glued there is none. */
    @ParameterizedTest
    @CsvSource({"20, 10.5", "9, 8", "7.5, 6.5", "7.4, 0"})
    void itShrinksBeforeThroatAndWelt(double roomMm, double radiusMm) {
        Optional<RivetCover> byThroat = RivetCover.over(TWO, RIVET, 30 - roomMm, FAR, 8);
        List<Point> row = List.of(new Point(30, -8 - roomMm), new Point(50, -8 - roomMm));
        Optional<RivetCover> byWelt = RivetCover.over(TWO, RIVET, 0, row, 8);
        for (Optional<RivetCover> cover : List.of(byThroat, byWelt)) {
            assertThat(cover.map(RivetCover::radiusMm).orElse(0.0)).isCloseTo(radiusMm, within(1e-9));
        }
    }

    /** Whole over the caps, half at half of the skive, nothing at its rim and past it. */
    @ParameterizedTest
    @CsvSource({"0, 1", "4.5, 1", "7.5, 0.5", "10.5, 0", "15, 0"})
    void itThinsFromTheCapsToItsRim(double besideMm, double thicknessMm) {
        RivetCover cover = RivetCover.over(TWO, RIVET, 0, FAR, 8).orElseThrow();
        assertThat(cover.thicknessMm(new Point(40, besideMm))).isCloseTo(thicknessMm, within(1e-9));
        assertThat(cover.thicknessMm(new Point(30 - besideMm, 0))).isCloseTo(thicknessMm, within(1e-9));
        assertThat(cover.thicknessMm(30 - besideMm)).isCloseTo(thicknessMm, within(1e-9));
        assertThat(cover.thicknessMm(50 + besideMm)).isCloseTo(thicknessMm, within(1e-9));
        assertThat(cover.thicknessMm(40)).isEqualTo(1);
    }
}
