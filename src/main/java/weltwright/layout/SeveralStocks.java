package weltwright.layout;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import weltwright.error.UserFacingException;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;

/**
 * Lays sheaths out on several stocks. The pieces of one thickness of each sheath lie together on one stock of that
 * thickness ({@link StockGroup}); so body, welt and straps of one sheath may come from different leather. In each group
 * half of the budget finds how many sheaths each stock gives and what one costs there; the other half fills the stocks
 * in the order of that cost. Where the most sheaths are wanted, the thickness of which there is least leather tells how
 * many are whole, and the others are laid out once more for that number.
 *
 * <p>That order is the cheapest way to a number of sheaths as long as stocks are filled whole. The last one is not, and
 * another might suit its few sheaths better; all ways to share them out are not tried.
 */
public final class SeveralStocks {
    private static final Messages TEXTS = Messages.of(SeveralStocks.class);

    private static final double TRIAL = 0.5;

    private final List<Stock> stocks;
    private final Spacing spacing;
    private final long seed;

    public SeveralStocks(List<Stock> stocks, Spacing spacing, long seed) {
        this.stocks = List.copyOf(stocks);
        this.spacing = spacing;
        this.seed = seed;
    }

    private record Trial(Stock stock, StockLayout layout, double sheathCost) {}

    /**
     * Fills stocks.
     *
     * @param kinds sheaths that are made in turn: first, second, ..., first again
     * @param count of the sheaths, or empty for as many as all stocks give
     * @param cost of the leather that a layout uses, in any unit
     * @param improved told each better layout on one of the stocks
     * @return layouts of at least one sheath, or of its part of that leather, in the order in which stocks are filled,
     *     those of the thickest leather first
     * @throws UserFacingException where there is no room for the count, or no stock is as thick as a piece
     */
    public List<StockLayout> fill(
            List<SheathPieces> kinds,
            OptionalInt count,
            ToDoubleFunction<StockLayout> cost,
            Budget budget,
            Consumer<StockLayout> improved) {
        List<StockGroup> groups = StockGroup.of(stocks, kinds);
        if (groups.size() == 1) {
            return fill(groups.get(0), kinds, count, cost, budget, improved);
        }
        double part = count.isPresent() ? 1.0 / groups.size() : 0.5 / groups.size();
        int sheaths = count.orElse(Integer.MAX_VALUE);
        if (count.isEmpty()) {
            for (StockGroup group : groups) {
                int found = 0;
                for (StockLayout layout : fill(group, group.inTurn(), count, cost, budget.part(part), improved)) {
                    found += layout.sheaths().size();
                }
                sheaths = Math.min(sheaths, group.wholeSheaths(found));
            }
        }
        List<StockLayout> layouts = new ArrayList<>();
        for (StockGroup group : groups) {
            List<SheathPieces> parts = group.partsOf(sheaths);
            if (!parts.isEmpty()) {
                layouts.addAll(fill(group, parts, OptionalInt.of(parts.size()), cost, budget.part(part), improved));
            }
        }
        return layouts;
    }

    private List<StockLayout> fill(
            StockGroup group,
            List<SheathPieces> kinds,
            OptionalInt count,
            ToDoubleFunction<StockLayout> cost,
            Budget budget,
            Consumer<StockLayout> improved) {
        List<Trial> trials = new ArrayList<>();
        for (Stock stock : group.stocks()) {
            StockLayout most =
                    on(stock).most(kinds, budget.part(TRIAL / group.stocks().size()), improved);
            if (!most.sheaths().isEmpty()) {
                trials.add(new Trial(
                        stock, most, cost.applyAsDouble(most) / most.sheaths().size()));
            }
        }
        trials.sort(Comparator.comparingDouble(Trial::sheathCost));
        List<StockLayout> layouts = new ArrayList<>();
        int done = 0;
        for (Trial trial : trials) {
            int left = count.orElse(Integer.MAX_VALUE) - done;
            if (left > 0) {
                Budget part = budget.part((1 - TRIAL) / trials.size());
                StockLayout layout = next(trial, kinds, done, left, part, improved);
                layouts.add(layout);
                done += layout.sheaths().size();
            }
        }
        if (count.isPresent() && done < count.getAsInt()) {
            throw new UserFacingException(
                    TEXTS.text("several-stocks.of-sheaths-room-was-found", count.getAsInt(), done),
                    TEXTS.text("several-stocks.take-more-leather-or-fewer"));
        }
        return layouts.stream().filter(layout -> !layout.sheaths().isEmpty()).toList();
    }

    /** The stock full, or the last sheaths on as little of it as the search finds. */
    private StockLayout next(
            Trial trial, List<SheathPieces> kinds, int done, int left, Budget budget, Consumer<StockLayout> improved) {
        List<SheathPieces> inTurn = new ArrayList<>(kinds);
        Collections.rotate(inTurn, -done);
        boolean asTried = done % kinds.size() == 0;
        StockLayout full = asTried ? trial.layout : on(trial.stock).most(inTurn, budget.part(0.5), improved);
        if (full.sheaths().size() < left) {
            return full;
        }
        List<SheathPieces> last = new ArrayList<>();
        for (int k = 0; k < left; k++) {
            last.add(inTurn.get(k % inTurn.size()));
        }
        return on(trial.stock).shortest(last, asTried ? budget : budget.part(0.5), improved);
    }

    private LeatherLayout on(Stock stock) {
        return new LeatherLayout(stock, spacing, seed);
    }
}
