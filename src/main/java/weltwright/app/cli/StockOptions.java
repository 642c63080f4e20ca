package weltwright.app.cli;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.job.StockShelf;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.layout.stock.StretchRule;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.units.Length;
import weltwright.units.LengthField;

/** The options for the leather to cut from, and how pieces lie on it. */
final class StockOptions {
    private static final Messages TEXTS = Messages.of(StockOptions.class);

    private static final String SHELF = "shelf:";

    /** Between the size of a panel and its thickness. */
    private static final char THICK = '@';

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

    @Option(names = "--good-leather", paramLabel = "PIECES", split = ",")
    private @Nullable List<Piece.Kind> good;

    /** The pieces of a sheath, as they may lie. */
    SheathPieces pieces(String name, Pattern pattern) {
        return SheathPieces.of(name, pattern, turns, good == null ? SheathPieces.USUALLY_GOOD : Set.copyOf(good));
    }

    /** Prices of stock on the shelf that has its own, by its name. */
    Map<String, LeatherPrice> ownPrices(StockShelf shelf) {
        Map<String, LeatherPrice> own = new HashMap<>();
        sizes.stream().filter(size -> size.startsWith(SHELF)).forEach(size -> {
            String name = shelf.named(size.substring(SHELF.length())).name();
            shelf.price(name).ifPresent(price -> own.put(name, price));
        });
        return own;
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
                    TEXTS.text("stock-options.stock-on-the-shelf-is"),
                    TEXTS.text("stock-options.name-each-piece-once-it"));
        }
        return sizes.stream().map(size -> stock(size, shelf)).toList();
    }

    /** A panel, its longer side along the direction of least stretch, or stock from the shelf. */
    private Stock stock(String size, StockShelf shelf) {
        if (size.startsWith(SHELF)) {
            if (thickness != null) {
                throw new UserFacingException(
                        TEXTS.text("stock-options.stock-on-the-shelf-has"),
                        TEXTS.text("stock-options.leave-stock-thickness-out"));
            }
            return shelf.named(size.substring(SHELF.length()));
        }
        int at = size.lastIndexOf(THICK);
        StockSize sides = StockSize.read(at < 0 ? size : size.substring(0, at));
        OptionalDouble thick = StockSize.thickness(at < 0 ? thickness : size.substring(at + 1));
        String name = at < 0
                ? TEXTS.text(
                        "stock-options.the-panel-of",
                        new Length(sides.lengthMm()).inMillimetres(),
                        new Length(sides.heightMm()).inMillimetres())
                : TEXTS.text(
                        "stock-options.the-panel-of-thick",
                        new Length(sides.lengthMm()).inMillimetres(),
                        new Length(sides.heightMm()).inMillimetres(),
                        new Length(thick.getAsDouble()).inMillimetres());
        return Stock.panel(name, sides.lengthMm(), sides.heightMm(), thick);
    }

    /** Whether what is cut from the stock is to be written down on the shelf. */
    boolean cuts() {
        if (cut && !sizes.stream().allMatch(size -> size.startsWith(SHELF))) {
            throw new UserFacingException(
                    TEXTS.text("stock-options.what-is-cut-from-stock"),
                    TEXTS.text("stock-options.put-it-on-the-shelf", SHELF));
        }
        return cut;
    }
}
