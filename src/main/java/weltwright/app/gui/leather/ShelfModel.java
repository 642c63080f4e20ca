package weltwright.app.gui.leather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import weltwright.error.UserFacingException;
import weltwright.job.ShelvedStock;
import weltwright.job.StockShelf;
import weltwright.layout.cost.LeatherPrice;

/** The shelf of stock as the window shows it. Used on the event thread only; its files are small. */
final class ShelfModel {
    private final StockShelf shelf;
    private final List<Runnable> listeners = new ArrayList<>();
    private final Consumer<String> errorListener;
    private List<ShelvedStock> items = List.of();
    private Map<String, LeatherPrice> prices = Map.of();
    private List<Path> unreadable = List.of();

    /** @param errorListener receives why something could not be done, for the user */
    ShelfModel(StockShelf shelf, Consumer<String> errorListener) {
        this.shelf = shelf;
        this.errorListener = errorListener;
    }

    /** All stock, sorted by name. */
    List<ShelvedStock> items() {
        return items;
    }

    /** The prices by area of stock that has one of its own, by its name. */
    Map<String, LeatherPrice> prices() {
        return prices;
    }

    /** Files of the shelf that cannot be read. */
    List<Path> unreadable() {
        return unreadable;
    }

    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Reads the shelf, which somebody else may have changed. */
    void read() {
        attempt(() -> {});
    }

    /**
     * Changes the shelf.
     *
     * @return whether it was changed; else the error was shown
     */
    boolean change(Consumer<StockShelf> change) {
        return attempt(() -> change.accept(shelf));
    }

    private boolean attempt(Runnable change) {
        List<ShelvedStock> before = items;
        List<Path> unreadableBefore = unreadable;
        boolean done = true;
        try {
            change.run();
        } catch (UserFacingException e) {
            errorListener.accept(e.getMessage());
            done = false;
        }
        try {
            StockShelf.Contents read = shelf.contents();
            items = read.items();
            prices = read.prices();
            unreadable = read.unreadable();
        } catch (UserFacingException e) {
            errorListener.accept(e.getMessage());
        }
        if (!items.equals(before) || !unreadable.equals(unreadableBefore)) {
            List.copyOf(listeners).forEach(Runnable::run);
        }
        return done;
    }
}
