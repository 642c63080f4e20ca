package weltwright.app.gui.leather;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import weltwright.error.UserFacingException;
import weltwright.job.PriceFile;
import weltwright.layout.cost.PriceList;

/** The maker's own prices as the window shows and changes them. Used on the event thread only. */
final class PriceListModel {
    private final Path file;
    private final Consumer<String> errorListener;
    private final List<Runnable> listeners = new ArrayList<>();
    private PriceList prices = PriceFile.blank();

    /** @param errorListener receives why prices could not be read or written, for the user */
    PriceListModel(Path file, Consumer<String> errorListener) {
        this.file = file;
        this.errorListener = errorListener;
    }

    /** All prices; 0 for those that are not set. */
    PriceList all() {
        return prices;
    }

    /** The prices; empty where none is set. */
    Optional<PriceList> list() {
        return Optional.of(prices).filter(list -> !list.isBlank());
    }

    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Reads the file, which the maker may have changed in a text editor. */
    void read() {
        try {
            set(Files.exists(file) ? PriceFile.read(file) : PriceFile.blank());
        } catch (UserFacingException e) {
            errorListener.accept(e.getMessage());
        }
    }

    /** Changes the prices and writes them. */
    void change(UnaryOperator<PriceList> edit) {
        try {
            PriceList changed = edit.apply(prices);
            if (!changed.equals(prices)) {
                PriceFile.write(changed, file);
                set(changed);
            }
        } catch (UserFacingException e) {
            errorListener.accept(e.getMessage());
            List.copyOf(listeners).forEach(Runnable::run); // the fields show again what holds
        }
    }

    private void set(PriceList changed) {
        if (!changed.equals(prices)) {
            prices = changed;
            List.copyOf(listeners).forEach(Runnable::run);
        }
    }
}
