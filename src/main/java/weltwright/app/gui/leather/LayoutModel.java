package weltwright.app.gui.leather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.job.CuttingPlan;
import weltwright.job.Job;
import weltwright.job.ShelvedStock;
import weltwright.layout.ManualLayout;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrices;
import weltwright.layout.cost.PriceList;
import weltwright.layout.stock.SheathPieces;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Pattern;

/**
 * The layout of the present job on the chosen stock. It is searched beside the event thread while the stage is shown;
 * the best so far is there from its first second on. A change of the sheath, of the stock or of a choice drops it and
 * begins anew. Pieces moved by hand are part of the job and take its place as long as they have room.
 *
 * <p>Used on the event thread only.
 */
final class LayoutModel {
    private static final long FIRST_SEED = 1;

    /** Passes of one search: ten to thirty seconds on a busy computer with two cores. Chosen by eye. */
    static final long STEPS = 600;

    /** What the layout is at. */
    enum Phase {
        /** There is no pattern, or it is being drawn. */
        NO_SHEATH,
        NO_STOCK,
        /** The stage is not shown, and no search was begun for the present input. */
        WAITING,
        SEARCHING,
        HELD,
        FOUND,
        /** Pieces lie as somebody moved them. */
        BY_HAND,
        /** No layout was found, and the error says why. */
        FAILED,
        /** What was cut is written down on the shelf. */
        CUT
    }

    private record Cut(LayoutInput input, CuttingPlan plan, Optional<Pattern> pattern, List<StockLayout> layouts) {}

    private final JobModel job;
    private final ShelfModel shelf;
    private final PriceListModel prices;
    private final Supplier<Optional<Pattern>> pattern;
    private final TaskQueue tasks;
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<LayoutInput> input = Optional.empty();
    private List<CuttingPlan.HandLayout> byHand = List.of();
    private Optional<List<ManualLayout>> hand = Optional.empty();
    private boolean handDropped;

    /** The layouts of the last move, which need no check, and their places. */
    private List<ManualLayout> moved = List.of();

    private List<CuttingPlan.HandLayout> movedPlaces = List.of();
    private List<StockLayout> found = List.of();
    private Object openedJob = "";
    private Optional<Cut> cut = Optional.empty();
    private @Nullable LayoutSearch search;

    /** Differs for each search, so that what an overtaken one still tells is ignored. */
    private Object searchToken = new Object();

    private TaskQueue.@Nullable SubmittedTask<?> running;
    private String error = "";
    private boolean held;
    private boolean showing;
    private int rounds;

    /**
     * @param pattern returns the pattern of the present job; empty while it is being drawn and where there is none
     * @param defectListener receives a message about a defect of the program
     */
    LayoutModel(
            JobModel job,
            ShelfModel shelf,
            PriceListModel prices,
            Supplier<Optional<Pattern>> pattern,
            Consumer<String> defectListener) {
        this.job = job;
        this.shelf = shelf;
        this.prices = prices;
        this.pattern = pattern;
        tasks = new TaskQueue(defectListener);
        tasks.addListener(this::notifyListeners);
        shelf.addListener(this::update);
        prices.addListener(this::update);
        job.subscribe(this::update);
    }

    /** Adds a listener that is called whenever something of the layout or of its search has changed. */
    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Calls the listeners though nothing has changed, such as after a piece was let go. */
    void refresh() {
        notifyListeners();
    }

    private void notifyListeners() {
        List.copyOf(listeners).forEach(Runnable::run);
    }

    /** Says whether the stage is shown; a search begins only then. */
    void setShowing(boolean showing) {
        this.showing = showing;
        if (showing) {
            shelf.read();
            prices.read();
        }
        update();
    }

    /** Takes the input anew; called whenever the pattern has changed. */
    void update() {
        Optional<LayoutInput> next = readInput();
        if (!next.equals(input)) {
            drop();
            input = next;
            byHand = List.of();
            hand = Optional.empty();
        }
        List<CuttingPlan.HandLayout> placed = plan().byHand();
        if (input.isPresent() && !placed.equals(byHand)) {
            byHand = placed;
            hand = placed.equals(movedPlaces) ? Optional.of(moved) : input.get().hand(placed);
            handDropped = hand.isEmpty() && !placed.isEmpty();
        }
        if (!plan().stocks().isEmpty()
                || !job.openedJob().equals(openedJob)
                || cut.filter(done -> !pattern.get().equals(done.pattern)).isPresent()) {
            cut = Optional.empty();
        }
        openedJob = job.openedJob();
        if (hand.isPresent()) {
            hold(true);
        } else if (input.isPresent() && showing && running == null && found.isEmpty() && error.isEmpty()) {
            begin();
        }
        notifyListeners();
    }

    private Optional<LayoutInput> readInput() {
        List<ShelvedStock> stocks = chosen();
        return stocks.isEmpty()
                ? Optional.empty()
                : pattern.get()
                        .map(made -> new LayoutInput(
                                stocks,
                                SheathPieces.of(sheathName(), made, plan().turns()),
                                plan().count(),
                                plan().spacing(),
                                new LeatherPrices(shelf.prices(), prices.list().map(PriceList::leather))));
    }

    private String sheathName() {
        String name = job.job().knifeName();
        return name.isEmpty() ? Messages.of(LayoutModel.class).text("sheath") : name;
    }

    /** The chosen stock that is on the shelf. */
    List<ShelvedStock> chosen() {
        List<ShelvedStock> chosen = new ArrayList<>();
        for (String name : plan().stocks()) {
            shelf.items().stream().filter(item -> item.name().equals(name)).forEach(chosen::add);
        }
        return chosen;
    }

    private CuttingPlan plan() {
        return job.job().cutting();
    }

    private void drop() {
        searchToken = new Object();
        if (running != null) {
            running.cancel();
        }
        running = null;
        search = null;
        found = List.of();
        error = "";
        held = false;
        handDropped = false;
        rounds = 0;
    }

    private void begin() {
        LayoutInput searched = input.orElseThrow();
        Object token = new Object();
        search = new LayoutSearch(
                searched,
                FIRST_SEED + rounds,
                STEPS,
                better -> {
                    if (token == searchToken) {
                        take(better);
                        notifyListeners();
                    }
                },
                result -> {
                    if (token == searchToken) {
                        finish(result);
                    }
                });
        held = false;
        searchToken = token;
        running = tasks.submit(search);
    }

    /** Of one search, each layout told is better than those before it; of a further one, perhaps not. */
    private void take(List<StockLayout> layouts) {
        LayoutInput now = input.orElseThrow();
        if (rounds == 0 || now.isBetter(layouts, found)) {
            found = layouts;
        }
    }

    private void finish(LayoutSearch.Result result) {
        running = null;
        search = null;
        if (result.error().isEmpty()) {
            take(result.layouts());
        } else if (rounds == 0) {
            found = List.of();
            error = result.error();
        }
        rounds++;
    }

    /** Holds the search, so that what it found so far can be looked at or moved, or lets it go on. */
    void hold(boolean hold) {
        if (search != null && held != hold) {
            held = hold;
            search.setHeld(hold);
            notifyListeners();
        }
    }

    /** Lets a search go on that was held; searches further, with other random numbers, where it was done. */
    void goOn() {
        if (phase() == Phase.BY_HAND) {
            job.change(now -> now.withCutting(now.cutting().withByHand(List.of())));
        }
        if (search != null) {
            hold(false);
        } else if (input.isPresent()) {
            error = "";
            begin();
            notifyListeners();
        }
    }

    /** The shown layout of one stock, to move its pieces. */
    ManualLayout manual(int index) {
        return hand.map(all -> all.get(index))
                .orElseGet(() ->
                        new ManualLayout(found.get(index), input.orElseThrow().spacing()));
    }

    /**
     * Takes a layout in which a piece was moved to a free place in place of the shown one of its stock.
     *
     * @param mergeKey equal for moves that are undone together; null for a step of its own
     */
    void moveByHand(@Nullable Object mergeKey, int index, ManualLayout changed) {
        List<ManualLayout> all = new ArrayList<>();
        for (int i = 0; i < layouts().size(); i++) {
            all.add(i == index ? changed : manual(i));
        }
        List<CuttingPlan.HandLayout> places = all.stream()
                .map(each -> CuttingPlan.HandLayout.of(each.layout()))
                .toList();
        moved = List.copyOf(all);
        movedPlaces = places;
        job.change(mergeKey, now -> now.withCutting(now.cutting().withByHand(places)));
    }

    Phase phase() {
        if (cut.isPresent()) {
            return Phase.CUT;
        }
        if (chosen().isEmpty()) {
            return Phase.NO_STOCK;
        }
        if (input.isEmpty()) {
            return Phase.NO_SHEATH;
        }
        if (hand.isPresent()) {
            return Phase.BY_HAND;
        }
        if (running != null) {
            return held ? Phase.HELD : Phase.SEARCHING;
        }
        if (!error.isEmpty()) {
            return Phase.FAILED;
        }
        return found.isEmpty() ? Phase.WAITING : Phase.FOUND;
    }

    /** The layouts to show, one for each stock that is used; none while there are none for the present job. */
    List<StockLayout> layouts() {
        return cut.map(Cut::layouts)
                .or(() -> hand.map(all -> all.stream().map(ManualLayout::layout).toList()))
                .orElse(found);
    }

    /** What the shown layouts follow from. */
    Optional<LayoutInput> input() {
        return cut.map(Cut::input).or(() -> input);
    }

    Optional<Pattern> pattern() {
        return pattern.get();
    }

    Job job() {
        return job.job();
    }

    /** Why there is no layout, for the user; empty where there is one, or the search still runs. */
    String error() {
        return error;
    }

    /** Whether pieces that were moved by hand do not fit the sheath or the leather any more. */
    boolean isHandDropped() {
        return handDropped;
    }

    /** The steps done, of all searches on this input. */
    long stepsDone() {
        double fraction = running == null ? 0 : running.fraction();
        return Math.round((rounds + fraction) * STEPS);
    }

    /** The part of the running search that is done, from 0 to 1. */
    double fraction() {
        return running == null ? 1 : running.fraction();
    }

    /** Marks the shown layouts as cut: the job has no stock chosen any more, and they stay shown. */
    void markCut() {
        cut = Optional.of(new Cut(input.orElseThrow(), plan(), pattern.get(), layouts()));
        job.change(now -> now.withCutting(now.cutting().withStocks(List.of()).withByHand(List.of())));
    }

    /** Takes the stock up again whose cut was undone. */
    void takeUpAgain() {
        cut.ifPresent(undone -> job.change(now -> now.withCutting(undone.plan)));
    }

    void close() {
        tasks.close();
    }
}
