package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.sheath.pattern.Piece;

class StrapRowsTest {
    private static final Stock PANEL = Stock.panel("panel", 620, 212, OptionalDouble.empty());

    /** A rectangle, its length upright where it is higher than long. */
    private static LeatherPiece rectangle(Piece.Kind kind, double length, double height, AllowedTurns turns) {
        Polyline outline = Polyline.closed(
                List.of(new Point(0, 0), new Point(length, 0), new Point(length, height), new Point(0, height)));
        return new LeatherPiece(new Piece(kind, kind.id(), kind.words(), 1, 3, outline, List.of(), List.of()), turns);
    }

    private static SheathPieces sheath(LeatherPiece strap) {
        return new SheathPieces("sheath", List.of(rectangle(Piece.Kind.FACE, 200, 80, AllowedTurns.HALF_TURNS), strap));
    }

    private static List<Envelope> straps(StockLayout layout) {
        return layout.pieces().stream()
                .filter(placed -> placed.piece().piece().kind() == Piece.Kind.BELT_STRAP)
                .map(placed -> placed.outline().polygon().getEnvelopeInternal())
                .toList();
    }

    /**
     * Six faces of 200 by 80 mm in two rows of three, and six straps of 180 by 16 mm in two rows of three below them:
     * with gaps of 3 mm they take 612 by 207 mm, and no more go on the panel.
     */
    @Test
    void strapsOfOneWidthLieEndToEndInRowsAlongTheLowerEdge() {
        SheathPieces sheath = sheath(rectangle(Piece.Kind.BELT_STRAP, 16, 180, AllowedTurns.ANY));
        for (StockLayout layout : List.of(
                new LeatherLayout(PANEL, Spacing.USUAL, 1)
                        .shortest(Collections.nCopies(6, sheath), Budget.passes(600), better -> {}),
                new LeatherLayout(PANEL, Spacing.USUAL, 1).most(List.of(sheath), Budget.passes(600), better -> {}))) {
            LayoutCheck.assertSound(layout, Spacing.USUAL);
            List<Envelope> straps = straps(layout);
            assertThat(straps).hasSize(6);
            assertThat(layout.usedLengthMm()).isBetween(612.0, 1.03 * 612 + 1);
            // Each row is as high as a strap with its gap, and the growth of outlines when they are simplified.
            for (Envelope strap : straps) {
                double row = (strap.getMinY() - 3) / (16 + 3);
                assertThat(strap.getHeight()).isCloseTo(16, within(1e-9));
                assertThat(row).isCloseTo(Math.rint(row), within(0.05));
                assertThat(row).isLessThan(1.5);
            }
            assertThat(straps.stream().map(strap -> Math.rint(strap.getMinY())).distinct())
                    .hasSize(2);
        }
    }

    @Test
    void aStrapThatMayNotLieAlongThePanelStaysOutOfTheRows() {
        LeatherPiece upright = rectangle(Piece.Kind.BELT_STRAP, 16, 180, AllowedTurns.HALF_TURNS);
        StockLayout layout = new LeatherLayout(PANEL, Spacing.USUAL, 1)
                .shortest(Collections.nCopies(3, sheath(upright)), Budget.passes(300), better -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(straps(layout))
                .allSatisfy(strap -> assertThat(strap.getWidth()).isCloseTo(16, within(1e-9)));
    }

    /** Where the rows leave too little height for the other pieces, all is as the search found it. */
    @Test
    void rowsCostNoSheath() {
        Stock low = Stock.panel("low panel", 620, 87, OptionalDouble.empty());
        SheathPieces sheath = sheath(rectangle(Piece.Kind.BELT_STRAP, 80, 16, AllowedTurns.ANY));
        StockLayout layout = new LeatherLayout(low, Spacing.USUAL, 1)
                .shortest(Collections.nCopies(2, sheath), Budget.passes(300), better -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(layout.sheaths()).hasSize(2);
    }

    @Test
    void strapsAloneAreRows() {
        LeatherPiece strap = rectangle(Piece.Kind.BELT_STRAP, 180, 16, AllowedTurns.HALF_TURNS);
        StockLayout layout = new LeatherLayout(PANEL, Spacing.USUAL, 1)
                .shortest(
                        Collections.nCopies(4, new SheathPieces("strap", List.of(strap))),
                        Budget.passes(100),
                        better -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(straps(layout)).hasSize(4);
    }
}
