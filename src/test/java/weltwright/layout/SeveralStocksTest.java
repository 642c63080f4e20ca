package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.sheath.pattern.Piece;

/**
 * Squares of 100 mm with gaps of 3 mm: two fill 209 mm of length, four 415 mm. In a panel of 108 mm height each takes
 * 114 cm² (211 × 108 / 2), in one of 180 mm 189 cm² (420 × 180 / 4).
 */
class SeveralStocksTest {
    private static final Stock WASTEFUL = Stock.panel("wasteful", 420, 180, OptionalDouble.empty());
    private static final Stock THRIFTY = Stock.panel("thrifty", 211, 108, OptionalDouble.empty());

    private static SheathPieces square(String name) {
        Polyline outline =
                Polyline.closed(List.of(new Point(0, 0), new Point(100, 0), new Point(100, 100), new Point(0, 100)));
        Piece piece = new Piece(Piece.Kind.FACE, name, name, 1, 3, outline, List.of(), List.of());
        return new SheathPieces(name, List.of(new LeatherPiece(piece, AllowedTurns.HALF_TURNS)));
    }

    private static List<StockLayout> fill(List<Stock> stocks, OptionalInt count, SheathPieces... kinds) {
        List<StockLayout> layouts = new SeveralStocks(stocks, Spacing.USUAL, 1)
                .fill(List.of(kinds), count, StockLayout::usedAreaMm2, Budget.passes(600), better -> {});
        layouts.forEach(layout -> LayoutCheck.assertSound(layout, Spacing.USUAL));
        return layouts;
    }

    @Test
    void theStockOnWhichASheathCostsLeastIsFilledFirst() {
        List<StockLayout> layouts = fill(List.of(WASTEFUL, THRIFTY), OptionalInt.of(3), square("square"));

        assertThat(layouts).extracting(StockLayout::stock).containsExactly(THRIFTY, WASTEFUL);
        assertThat(layouts).extracting(layout -> layout.sheaths().size()).containsExactly(2, 1);
        assertThat(layouts.get(1).usedLengthMm()).isBetween(106.0, 107.0);
    }

    /** The same stock is first where the other one is a gift. */
    @Test
    void costIsWhatTheCallerSays() {
        List<StockLayout> layouts = new SeveralStocks(List.of(THRIFTY, WASTEFUL), Spacing.USUAL, 1)
                .fill(
                        List.of(square("square")),
                        OptionalInt.of(2),
                        layout -> layout.stock().equals(WASTEFUL) ? 0 : 1,
                        Budget.passes(600),
                        better -> {});

        assertThat(layouts).extracting(StockLayout::stock).containsExactly(WASTEFUL);
    }

    @Test
    void kindsGoOnInTurnFromStockToStock() {
        List<StockLayout> layouts =
                fill(List.of(THRIFTY, WASTEFUL), OptionalInt.of(5), square("a"), square("b"), square("c"));

        assertThat(layouts.stream().flatMap(layout -> layout.sheaths().stream()).map(SheathPieces::name))
                .containsExactly("a", "b", "c", "a", "b");
    }

    @Test
    void allStockIsFilledWhereTheMostIsWanted() {
        List<StockLayout> layouts = fill(List.of(WASTEFUL, THRIFTY), OptionalInt.empty(), square("square"));

        assertThat(layouts).extracting(layout -> layout.sheaths().size()).containsExactly(2, 4);
    }

    @Test
    void whatDoesNotFitIsSaid() {
        assertThatThrownBy(() -> fill(List.of(WASTEFUL, THRIFTY), OptionalInt.of(7), square("square")))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("on all stock together for 6");
        Stock thick = Stock.panel("thick", 420, 180, OptionalDouble.of(5));
        assertThatThrownBy(() -> fill(List.of(thick, thick), OptionalInt.of(1), square("square")))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("leather of 3.0 mm, and none of the stock is as thick");
    }

    /** A face of 100 mm and 3 mm thick, and two welts of 50 mm and 2 mm thick. */
    private static SheathPieces faceAndWelts() {
        Polyline small =
                Polyline.closed(List.of(new Point(0, 0), new Point(50, 0), new Point(50, 50), new Point(0, 50)));
        LeatherPiece welt = new LeatherPiece(
                new Piece(Piece.Kind.WELT, "welt", "welt", 2, 2, small, List.of(), List.of()), AllowedTurns.HALF_TURNS);
        List<LeatherPiece> pieces = new ArrayList<>(square("sheath").pieces());
        pieces.addAll(List.of(welt, welt));
        return new SheathPieces("sheath", pieces);
    }

    /** Two faces fit on the thick panel; the thin one has room for eight welts, and gives as many as are needed. */
    @Test
    void facesAndWeltsComeFromLeatherOfTheirThickness() {
        Stock thick = Stock.panel("thick", 211, 108, OptionalDouble.of(3.2));
        Stock thin = Stock.panel("thin", 300, 108, OptionalDouble.of(1.9));

        List<StockLayout> most = fill(List.of(thin, thick), OptionalInt.empty(), faceAndWelts());

        assertThat(most).extracting(StockLayout::stock).containsExactly(thick, thin);
        assertThat(most).extracting(layout -> layout.sheaths().size()).containsExactly(2, 2);
        assertThat(most.get(0).pieces())
                .allMatch(placed -> placed.piece().piece().kind() == Piece.Kind.FACE);
        assertThat(most.get(1).pieces()).hasSize(4);
        // Two welts above each other need 109 mm of 108, so each has 53 mm of the length: 3 + 4 * 53.
        assertThat(most.get(1).usedLengthMm()).isBetween(215.0, 217.0);

        List<StockLayout> one = fill(List.of(thin, thick), OptionalInt.of(1), faceAndWelts());
        assertThat(one).extracting(layout -> layout.pieces().size()).containsExactly(1, 2);
    }

    @Test
    void leatherThatTellsNoThicknessIsForPiecesWithoutTheirOwn() {
        Stock thick = Stock.panel("thick", 211, 108, OptionalDouble.of(3.2));

        List<StockLayout> layouts = fill(List.of(thick, WASTEFUL), OptionalInt.of(1), faceAndWelts());

        assertThat(layouts).extracting(StockLayout::stock).containsExactly(thick, WASTEFUL);
        assertThat(layouts).extracting(layout -> layout.pieces().size()).containsExactly(1, 2);
    }
}
