package weltwright.app.gui.leather;

import java.nio.file.Path;
import weltwright.job.PriceFile;
import weltwright.job.StockShelf;

/**
 * Where the maker's leather and prices are kept.
 *
 * @param prices file of the price list; need not exist
 */
public record LeatherFiles(StockShelf shelf, Path prices) {
    /** Those of this computer's user. */
    public static LeatherFiles standard() {
        return new LeatherFiles(StockShelf.standard(), PriceFile.standard());
    }
}
