package weltwright.app.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.job.StockShelf;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.layout.stock.StretchRule;
import weltwright.units.Length;
import weltwright.units.LengthField;

/** The options for the leather to cut from, and how pieces lie on it. */
final class StockOptions {
    private static final String SHELF = "shelf:";
    private static final LengthField GAP = LengthField.of("gap between pieces", 0, 50);
    private static final LengthField EDGE_GAP = LengthField.of("gap to the edge", 0, 100);

    @Option(names = "--stock", paramLabel = "SIZE", required = true)
    private List<String> sizes;

    @Option(names = "--stock-thickness", paramLabel = "LENGTH")
    private @Nullable String thickness;

    @Option(names = "--turns", paramLabel = "TURNS", defaultValue = "nearly_along")
    private StretchRule turns;

    @Option(names = "--gap", paramLabel = "LENGTH")
    private @Nullable String gap;

    @Option(names = "--edge-gap", paramLabel = "LENGTH")
    private @Nullable String edgeGap;

    @Option(names = "--cut")
    private boolean cut;

    StretchRule stretchRule() {
        return turns;
    }

    Spacing spacing() {
        return new Spacing(
                gap == null ? Spacing.USUAL.betweenMm() : GAP.readMm(gap),
                edgeGap == null ? Spacing.USUAL.edgeMm() : EDGE_GAP.readMm(edgeGap));
    }

    /** All stock in the order given. */
    List<Stock> stocks(StockShelf shelf) {
        List<String> shelved =
                sizes.stream().filter(size -> size.startsWith(SHELF)).toList();
        if (shelved.stream().distinct().count() < shelved.size()) {
            throw new UserFacingException(
                    "Stock on the shelf is named twice.", "Name each piece once: it can be cut only once.");
        }
        return sizes.stream().map(size -> stock(size, shelf)).toList();
    }

    /** A panel, its longer side along the direction of least stretch, or stock from the shelf. */
    private Stock stock(String size, StockShelf shelf) {
        if (size.startsWith(SHELF)) {
            if (thickness != null) {
                throw new UserFacingException(
                        "Stock on the shelf has its own thickness.", "Leave --stock-thickness out.");
            }
            return shelf.named(size.substring(SHELF.length()));
        }
        StockSize sides = StockSize.read(size);
        String name = "the panel of " + new Length(sides.lengthMm()).inMillimetres() + " × "
                + new Length(sides.heightMm()).inMillimetres();
        return Stock.panel(name, sides.lengthMm(), sides.heightMm(), StockSize.thickness(thickness));
    }

    /** Whether what is cut from the stock is to be written down on the shelf. */
    boolean cuts() {
        if (cut && !sizes.stream().allMatch(size -> size.startsWith(SHELF))) {
            throw new UserFacingException(
                    "What is cut from stock that is not on the shelf cannot be written down.",
                    "Put it on the shelf first (stock), and say --stock " + SHELF + "NAME.");
        }
        return cut;
    }
}
