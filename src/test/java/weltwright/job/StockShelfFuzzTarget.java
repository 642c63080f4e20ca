package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import weltwright.fuzz.FuzzedInput;
import weltwright.layout.stock.Stock;

/**
 * Any bytes as a file on the shelf of stock, and as the outline of a hide: refused, or stock whose usable part can be
 * computed.
 */
public final class StockShelfFuzzTarget {
    private static final FuzzedInput.Folder FOLDER = new FuzzedInput.Folder("shoulder.json");

    private StockShelfFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        FOLDER.holding(input);
        StockShelf shelf = new StockShelf(FOLDER.path());
        FuzzedInput.unlessRefused(shelf::all).orElse(List.of()).forEach(StockShelfFuzzTarget::check);
        FuzzedInput.unlessRefused(() -> shelf.named("shoulder")).ifPresent(StockShelfFuzzTarget::check);
        FuzzedInput.unlessRefused(() -> StockShelf.outline(FOLDER.file(), "hide", OptionalDouble.empty()))
                .ifPresent(StockShelfFuzzTarget::check);
        FOLDER.holdsNothingElse();
    }

    private static void check(Stock stock) {
        FuzzedInput.unlessRefused(stock::usable)
                .ifPresent(usable -> assertThat(usable.getArea())
                        .isBetween(0.0, Math.abs(stock.outline().signedAreaMm2()) + 1));
    }
}
