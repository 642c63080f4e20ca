package weltwright.layout.cost;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.StockLayout;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.sheath.pattern.Piece;

/** Panels of 1 m by 1 m whose first half is used, shared out by hand. */
class LeatherPricesTest {
    private static final LeatherPrice LIST = new LeatherPrice(new BigDecimal("40"), LeatherPrice.Per.SQUARE_METRE);
    private static final LeatherPrice OWN = new LeatherPrice(new BigDecimal("10"), LeatherPrice.Per.SQUARE_METRE);

    private static SheathPieces part(String name, Piece.Kind kind, double side) {
        Polyline square = Polyline.closed(
                List.of(new Point(0, 0), new Point(side, 0), new Point(side, side), new Point(0, side)));
        return new SheathPieces(
                name, List.of(new LeatherPiece(new Piece(kind, 1, 3, square, List.of(), List.of()), AllowedTurns.ANY)));
    }

    private static StockLayout half(String stock, SheathPieces... parts) {
        return new StockLayout(Stock.panel(stock, 1000, 1000, OptionalDouble.empty()), List.of(parts), List.of(), 500);
    }

    @Test
    void stockWithoutAPriceOfItsOwnHasTheUsualOne() {
        LeatherPrices prices = new LeatherPrices(Map.of("belly", OWN), Optional.of(LIST));

        assertThat(prices.of(half("shoulder", part("a", Piece.Kind.FACE, 100))).orElseThrow())
                .isEqualByComparingTo("20");
        assertThat(prices.of(half("belly", part("a", Piece.Kind.FACE, 100))).orElseThrow())
                .isEqualByComparingTo("5");
        assertThat(new LeatherPrices(Map.of(), Optional.empty()).of(half("belly")))
                .isEmpty();
    }

    /** Of the shoulder's 20, a's face has a fifth by area (1 to 4); its welt is alone on the belly's 5. */
    @Test
    void aSheathPaysForItsPartsOnAllStocks() {
        LeatherPrices prices = new LeatherPrices(Map.of("belly", OWN), Optional.of(LIST));
        StockLayout shoulder = half("shoulder", part("a", Piece.Kind.FACE, 100), part("b", Piece.Kind.FACE, 200));
        StockLayout belly = half("belly", part("a", Piece.Kind.WELT, 50));

        assertThat(prices.ofSheath(List.of(shoulder, belly), "a")).isEqualByComparingTo("9");
        assertThat(prices.ofSheath(List.of(shoulder, belly), "b")).isEqualByComparingTo("16");
    }
}
