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

/**
 * Lays sheaths out on several stocks, each sheath whole on one of them. Half of the budget finds how many sheaths each
 * stock gives and what one costs there; the other half fills the stocks in the order of that cost.
 *
 * <p>That order is the cheapest way to a number of sheaths as long as stocks are filled whole. The last one is not, and
 * another might suit its few sheaths better; all ways to share them out are not tried.
 */
public final class SeveralStocks {
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
     * @return layouts of at least one sheath, in the order in which stocks are filled
     * @throws UserFacingException where there is no room for the count, or a stock is of another thickness than a piece
     */
    public List<StockLayout> fill(
            List<SheathPieces> kinds,
            OptionalInt count,
            ToDoubleFunction<StockLayout> cost,
            Budget budget,
            Consumer<StockLayout> improved) {
        List<Trial> trials = new ArrayList<>();
        for (Stock stock : stocks) {
            checkThickness(kinds, stock);
            StockLayout most = on(stock).most(kinds, budget.part(TRIAL / stocks.size()), improved);
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
                    "Of " + count.getAsInt() + " sheaths, room was found on all stock together for " + done + ".",
                    "Take more leather or fewer sheaths, or let the search take longer.");
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

    /** Body and welt of one sheath from two stocks would have to be counted together, which is not done. */
    private static void checkThickness(List<SheathPieces> kinds, Stock stock) {
        for (SheathPieces kind : kinds) {
            if (kind.suiting(stock).pieces().size() < kind.pieces().size()) {
                throw new UserFacingException(
                        "Not all pieces of " + kind.name() + " are made of leather as thick as " + stock.name() + ".",
                        "Name several stocks only where each is as thick as all pieces, or lay them out one by one.");
            }
        }
    }
}
