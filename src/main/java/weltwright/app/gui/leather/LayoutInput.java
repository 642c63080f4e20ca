package weltwright.app.gui.leather;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import weltwright.job.CuttingPlan;
import weltwright.job.ShelvedStock;
import weltwright.layout.ManualLayout;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;

/**
 * What a layout follows from, beside seed and steps of the search.
 *
 * @param stocks the chosen stock, at least one
 * @param sheath all pieces of one sheath
 * @param count of the sheaths; empty for as many as find room
 * @param price of leather for stock that has none of its own; empty where none is set
 */
record LayoutInput(
        List<ShelvedStock> stocks,
        SheathPieces sheath,
        OptionalInt count,
        Spacing spacing,
        Optional<LeatherPrice> price) {

    /** The names of pieces that are of other leather than every chosen stock. */
    List<String> leftOut() {
        return sheath.pieces().stream()
                .filter(piece -> stocks.stream()
                        .noneMatch(item -> sheath.suiting(item.stock()).pieces().contains(piece)))
                .map(piece -> piece.piece().name())
                .distinct()
                .toList();
    }

    /**
     * Takes up layouts by hand; empty where they do not hold for this input: other stock or another number, or pieces
     * that have no room where they were put.
     */
    Optional<List<ManualLayout>> hand(List<CuttingPlan.HandLayout> byHand) {
        List<ManualLayout> layouts = new ArrayList<>();
        int sheaths = 0;
        for (CuttingPlan.HandLayout each : byHand) {
            Optional<ManualLayout> layout = stocks.stream()
                    .map(ShelvedStock::stock)
                    .filter(stock -> stock.name().equals(each.stock()))
                    .findFirst()
                    .flatMap(stock -> manual(stock, each));
            if (layout.isEmpty()) {
                return Optional.empty();
            }
            layouts.add(layout.get());
            sheaths += layout.get().layout().sheaths().size();
        }
        boolean asMany = count.isEmpty() || count.getAsInt() == sheaths;
        return layouts.isEmpty() || !asMany ? Optional.empty() : Optional.of(List.copyOf(layouts));
    }

    private Optional<ManualLayout> manual(Stock stock, CuttingPlan.HandLayout hand) {
        SheathPieces suiting = sheath.suiting(stock);
        Optional<List<PlacedPiece>> placed = hand.placed(suiting);
        int each = suiting.pieces().size();
        return placed.flatMap(
                pieces -> ManualLayout.of(stock, Collections.nCopies(pieces.size() / each, suiting), pieces, spacing));
    }

    /** What the leather costs that a layout uses: by its price, or by its area where there is none. */
    double cost(StockLayout layout) {
        double used = layout.usedAreaMm2();
        return price(layout.stock().name())
                .map(each -> each.of(used, layout.stock().usable().getArea()).doubleValue())
                .orElse(used);
    }

    /** The price of stock of a name: its own, or else that of the price list. */
    Optional<LeatherPrice> price(String stock) {
        return stocks.stream()
                .filter(item -> item.name().equals(stock))
                .findFirst()
                .flatMap(ShelvedStock::price)
                .or(() -> price.filter(each -> each.amount().signum() > 0));
    }

    /** Whether layouts are better than others for this input: more sheaths, or as many on less leather. */
    boolean isBetter(List<StockLayout> layouts, List<StockLayout> others) {
        int more = Integer.compare(sheaths(layouts), sheaths(others));
        return more == 0 ? cost(layouts) < cost(others) : more > 0;
    }

    private double cost(List<StockLayout> layouts) {
        return layouts.stream().mapToDouble(this::cost).sum();
    }

    static int sheaths(List<StockLayout> layouts) {
        return layouts.stream().mapToInt(layout -> layout.sheaths().size()).sum();
    }
}
