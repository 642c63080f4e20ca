package weltwright.layout.cost;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import weltwright.layout.StockLayout;
import weltwright.layout.stock.SheathPieces;

/**
 * What leather costs: stock with a price of its own by that, all other by the usual one.
 *
 * @param own prices by the name of the stock
 * @param usual price; empty where the maker has set none
 */
public record LeatherPrices(Map<String, LeatherPrice> own, Optional<LeatherPrice> usual) {
    public LeatherPrices {
        own = Map.copyOf(own);
        usual = usual.filter(price -> price.amount().signum() > 0);
    }

    /** The price of the leather that a layout uses, waste included, not rounded; empty where there is none. */
    public Optional<BigDecimal> of(StockLayout layout) {
        return Optional.ofNullable(own.get(layout.stock().name()))
                .or(() -> usual)
                .map(price ->
                        price.of(layout.usedAreaMm2(), layout.stock().usable().getArea()));
    }

    /**
     * The price of the leather of one sheath, whose parts may come from several stocks: what each layout uses is shared
     * out by the area of the pieces. A part that is laid out on several stocks costs what it costs on the first one.
     *
     * @param name of the sheath
     */
    public BigDecimal ofSheath(List<StockLayout> layouts, String name) {
        BigDecimal sum = BigDecimal.ZERO;
        Set<SheathPieces> counted = new HashSet<>();
        for (StockLayout layout : layouts) {
            for (SheathPieces part : layout.sheaths()) {
                if (part.name().equals(name) && counted.add(part)) {
                    BigDecimal share = BigDecimal.valueOf(part.areaMm2() / layout.piecesAreaMm2());
                    sum = sum.add(of(layout).orElse(BigDecimal.ZERO).multiply(share, MathContext.DECIMAL64));
                }
            }
        }
        return sum;
    }
}
