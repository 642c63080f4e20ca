package weltwright.app.gui.leather;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.error.UserFacingException;
import weltwright.layout.LeatherLayout;
import weltwright.layout.SeveralStocks;
import weltwright.layout.StockLayout;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;
import weltwright.trace.ProgressListener;

/**
 * One search for a layout, which can be held and gone on with. With the same input, seed and number of steps its result
 * is the same, however often it was held.
 */
final class LayoutSearch implements BackgroundTask<LayoutSearch.Result> {
    private static final long TOLD_EACH_MS = 100;
    private static final Messages MESSAGES = Messages.of(LayoutSearch.class);

    private final LayoutInput input;
    private final long seed;
    private final long steps;
    private final Consumer<List<StockLayout>> improved;
    private final Consumer<Result> finished;
    private boolean held;
    private long done;
    private long toldMs;

    /**
     * The layouts found, or why there are none.
     *
     * @param error for the user; empty where there are layouts
     */
    record Result(List<StockLayout> layouts, String error) {}

    /**
     * @param steps passes of the search, at most
     * @param improved receives each better layout, on the event thread
     * @param finished receives the result, on the event thread
     */
    LayoutSearch(
            LayoutInput input, long seed, long steps, Consumer<List<StockLayout>> improved, Consumer<Result> finished) {
        this.input = input;
        this.seed = seed;
        this.steps = steps;
        this.improved = improved;
        this.finished = finished;
    }

    /** Holds the search after its present step, or lets it go on. */
    synchronized void setHeld(boolean held) {
        this.held = held;
        notifyAll();
    }

    @Override
    public String title() {
        return MESSAGES.text("search.title");
    }

    @Override
    public Result doInBackground(ProgressListener progress) {
        try {
            List<StockLayout> layouts = layouts(Budget.passes(steps, () -> stepDone(progress)));
            return LayoutInput.sheaths(layouts) > 0
                    ? new Result(layouts, "")
                    : new Result(
                            List.of(),
                            MESSAGES.text("search.none", input.stocks().get(0).name()));
        } catch (UserFacingException e) {
            return new Result(List.of(), e.getMessage());
        }
    }

    @Override
    public void succeeded(Result result) {
        finished.accept(result);
    }

    @Override
    public void abandoned() {
        finished.accept(new Result(List.of(), MESSAGES.text("search.failed")));
    }

    private List<StockLayout> layouts(Budget budget) {
        List<SheathPieces> kinds = List.of(input.sheath());
        if (input.stocks().size() > 1) {
            Map<String, StockLayout> best = new LinkedHashMap<>();
            List<Stock> stocks =
                    input.stocks().stream().map(item -> item.stock()).toList();
            return new SeveralStocks(stocks, input.spacing(), seed)
                    .fill(kinds, input.count(), input::cost, budget, better -> {
                        best.put(better.stock().name(), better);
                        tell(List.copyOf(best.values()));
                    });
        }
        Stock stock = input.stocks().get(0).stock();
        LeatherLayout search = new LeatherLayout(stock, input.spacing(), seed);
        Consumer<StockLayout> teller = better -> tell(List.of(better));
        return List.of(
                input.count().isEmpty()
                        ? search.most(kinds, budget, teller)
                        : search.shortest(
                                Collections.nCopies(input.count().getAsInt(), input.sheath()), budget, teller));
    }

    private void tell(List<StockLayout> layouts) {
        SwingUtilities.invokeLater(() -> improved.accept(layouts));
    }

    private void stepDone(ProgressListener progress) {
        done++;
        long now = System.currentTimeMillis();
        if (now - toldMs >= TOLD_EACH_MS) {
            toldMs = now;
            progress.at("", Math.min(1, (double) done / steps));
        }
        waitWhileHeld(progress);
    }

    private synchronized void waitWhileHeld(ProgressListener progress) {
        try {
            while (held) {
                progress.at("", Math.min(1, (double) done / steps)); // throws where the search is cancelled
                wait(TOLD_EACH_MS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException();
        }
    }
}
