package weltwright.app.gui.leather;

import java.util.List;
import java.util.Optional;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrices;
import weltwright.layout.cost.PriceList;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.sheath.pattern.Pattern;

/**
 * What the cost of one sheath follows from.
 *
 * @param name of the sheath in the layouts
 */
record CostInput(List<StockLayout> layouts, String name, Pattern pattern, LeatherPrices leather, PriceList prices) {

    /** Empty where nothing is laid out, or no price is set. */
    static Optional<CostInput> of(LayoutModel model, PriceListModel prices) {
        Optional<LayoutInput> input = model.input();
        Optional<Pattern> pattern = model.pattern();
        if (model.layouts().isEmpty() || pattern.isEmpty() || input.isEmpty()) {
            return Optional.empty();
        }
        LeatherPrices leather = input.get().prices();
        boolean blank = prices.list().isEmpty() && leather.own().isEmpty();
        return blank
                ? Optional.empty()
                : Optional.of(new CostInput(
                        model.layouts(), input.get().sheath().name(), pattern.get(), leather, prices.all()));
    }

    SheathCost cost() {
        return SheathCost.of(SheathNeeds.besidesLeather(pattern), leather.ofSheath(layouts, name), prices);
    }
}
