package weltwright.app.gui.leather;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import weltwright.job.CuttingPlan;
import weltwright.job.ShelvedStock;
import weltwright.layout.ManualLayout;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrices;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;

/**
 * What a layout follows from, beside seed and steps of the search.
 *
 * @param stocks the chosen stock, at least one
 * @param sheath all pieces of one sheath
 * @param count of the sheaths; empty for as many as find room
 * @param prices of the leather
 */
record LayoutInput(
        List<ShelvedStock> stocks, SheathPieces sheath, OptionalInt count, Spacing spacing, LeatherPrices prices) {

    /** The names of pieces that are of other leather than every chosen stock. */
    List<String> leftOut() {
        return sheath.pieces().stream()
                .filter(piece -> stocks.stream()
                        .noneMatch(item -> item.stock().suits(piece.piece().thicknessMm())))
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
        }
        int sheaths = sheaths(layouts.stream().map(ManualLayout::layout).toList());
        return sheaths == 0 || sheaths != count.orElse(sheaths) ? Optional.empty() : Optional.of(List.copyOf(layouts));
    }

    private Optional<ManualLayout> manual(Stock stock, CuttingPlan.HandLayout hand) {
        SheathPieces part = hand.part(sheath);
        if (!part.equals(part.suiting(stock))) {
            return Optional.empty();
        }
        Optional<List<PlacedPiece>> placed = hand.placed(part);
        int each = part.pieces().size();
        return placed.flatMap(
                pieces -> ManualLayout.of(stock, Collections.nCopies(pieces.size() / each, part), pieces, spacing));
    }

    /** What the leather costs that a layout uses: by its price, or by its area where there is none. */
    double cost(StockLayout layout) {
        return prices.of(layout).map(Number::doubleValue).orElseGet(layout::usedAreaMm2);
    }

    /** Whether layouts are better than others for this input: more sheaths, or as many on less leather. */
    boolean isBetter(List<StockLayout> layouts, List<StockLayout> others) {
        int more = Integer.compare(sheaths(layouts), sheaths(others));
        return more == 0 ? cost(layouts) < cost(others) : more > 0;
    }

    private double cost(List<StockLayout> layouts) {
        return layouts.stream().mapToDouble(this::cost).sum();
    }

    /** The number of whole sheaths: parts from leather of several thicknesses make one. */
    static int sheaths(List<StockLayout> layouts) {
        Map<SheathPieces, Long> parts = layouts.stream()
                .flatMap(layout -> layout.sheaths().stream())
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        return parts.values().stream().mapToInt(Long::intValue).min().orElse(0);
    }
}
