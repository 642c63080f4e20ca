package weltwright.app.gui.leather;

import java.util.List;
import java.util.Optional;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.cost.PriceList;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.sheath.pattern.Pattern;

/**
 * What the cost of one sheath follows from.
 *
 * @param layout the first stock that gives a sheath
 * @param prices with the price of leather of this stock
 */
record CostInput(StockLayout layout, Pattern pattern, PriceList prices) {

    /** Empty where nothing is laid out, or no price is set. */
    static Optional<CostInput> of(LayoutModel model, PriceListModel prices) {
        List<StockLayout> layouts = model.layouts().stream()
                .filter(layout -> !layout.sheaths().isEmpty())
                .toList();
        Optional<Pattern> pattern = model.pattern();
        if (layouts.isEmpty() || pattern.isEmpty() || model.input().isEmpty()) {
            return Optional.empty();
        }
        StockLayout first = layouts.get(0);
        Optional<LeatherPrice> own = model.input().get().price(first.stock().name());
        PriceList all = own.map(prices.all()::withLeather).orElse(prices.all());
        return all.isBlank() ? Optional.empty() : Optional.of(new CostInput(first, pattern.get(), all));
    }

    SheathCost cost() {
        return SheathCost.of(SheathNeeds.of(layout, layout.sheaths().get(0), pattern), prices);
    }
}
