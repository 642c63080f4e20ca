package weltwright.job;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.io.UserDirectory;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;
import weltwright.message.Messages;

/**
 * The leather that the maker has, one JSON file for each piece of stock. A file keeps what the stock was before each
 * cut, so that a cut can be undone.
 *
 * @param folder of the files; made with the first stock
 */
public record StockShelf(Path folder) {
    private static final Messages TEXTS = Messages.of(StockShelf.class);

    private static final String ENDING = ".json";
    private static final FileKind KIND =
            FileKind.of(TEXTS.text("stock-shelf.a-piece-of-stock"), "\"" + StockJson.FORMAT + "\"");
    private static final int GREATEST_BYTES = 4_000_000;

    /** The shelf of this computer's user. */
    public static StockShelf standard() {
        return new StockShelf(UserDirectory.SETTINGS.path().resolve("stock"));
    }

    /**
     * What lies on the shelf.
     *
     * @param items all stock that can be read, with what the maker wrote down of it, sorted by name
     * @param prices by area, of stock that has its own, by its name
     * @param unreadable files that cannot be read, sorted
     */
    public record Contents(List<ShelvedStock> items, Map<String, LeatherPrice> prices, List<Path> unreadable) {
        public Contents {
            items = List.copyOf(items);
            prices = Map.copyOf(prices);
            unreadable = List.copyOf(unreadable);
        }
    }

    /** All stock that can be read, sorted by name. */
    public List<Stock> all() {
        return contents().items().stream().map(ShelvedStock::stock).toList();
    }

    /** Reads the whole shelf. A file that cannot be read hides no other. */
    public Contents contents() {
        List<ShelvedStock> items = new ArrayList<>();
        Map<String, LeatherPrice> prices = new HashMap<>();
        List<Path> unreadable = new ArrayList<>();
        for (Path file : files()) {
            try {
                StockJson document = read(file);
                ShelvedStock item = document.item();
                items.add(item);
                document.priceByArea().ifPresent(price -> prices.put(item.name(), price));
            } catch (UserFacingException e) {
                unreadable.add(file);
            }
        }
        items.sort(Comparator.comparing(ShelvedStock::name));
        return new Contents(items, prices, unreadable);
    }

    private List<Path> files() {
        List<Path> all = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + ENDING)) {
                files.forEach(all::add);
            } catch (IOException | DirectoryIteratorException e) {
                throw new UserFacingException(
                        TEXTS.text("stock-shelf.the-folder-cannot-be-read", folder),
                        TEXTS.text("stock-shelf.check-that-you-may-read"),
                        e);
            }
        }
        all.sort(Comparator.naturalOrder());
        return all;
    }

    /** The stock of a name. Throws {@link UserFacingException} where there is none. */
    public Stock named(String name) {
        return item(name).stock();
    }

    /** The stock of a name with what is told of it. Throws {@link UserFacingException} where there is none. */
    public ShelvedStock item(String name) {
        return read(existing(name)).item();
    }

    /**
     * The price of the leather of stock, where it has its own, by its area: what was paid for a whole piece is shared
     * out over what it measured before anything was cut from it.
     */
    public Optional<LeatherPrice> price(String name) {
        return read(existing(name)).priceByArea();
    }

    /** Puts new stock on the shelf. Throws {@link UserFacingException} where there is one of its name. */
    public void add(Stock stock) {
        add(new ShelvedStock(stock, "", Optional.empty()));
    }

    /**
     * Puts new stock on the shelf, with what the maker writes down of it. Throws {@link UserFacingException} where
     * there is one of its name.
     */
    public void add(ShelvedStock item) {
        Path file = file(item.name());
        if (Files.exists(file)) {
            throw new UserFacingException(
                    TEXTS.text("stock-shelf.there-is-stock-called-already", item.name()),
                    TEXTS.text("stock-shelf.give-the-new-one-another"));
        }
        write(file, StockJson.of(item));
    }

    /**
     * Replaces stock, also under another name. Cuts can still be undone where its outline stays as it is.
     *
     * @param name its name so far
     */
    public void replace(String name, ShelvedStock changed) {
        Path before = existing(name);
        Path after = file(changed.name());
        if (!before.equals(after)) {
            add(changed);
        }
        write(after, read(before).replacedBy(changed));
        if (!before.equals(after)) {
            remove(name);
        }
    }

    /** Replaces stock by what a cut has left of it. */
    public void cut(Stock rest) {
        Path file = existing(rest.name());
        write(file, read(file).cutTo(rest));
    }

    /** Undoes the last cut. Throws {@link UserFacingException} where the stock is whole. */
    public Stock undo(String name) {
        Path file = existing(name);
        StockJson before = read(file)
                .beforeCut()
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("stock-shelf.nothing-has-been-cut-from", name),
                        TEXTS.text("stock-shelf.name-stock-from-which-something")));
        write(file, before);
        return before.current();
    }

    /** Takes stock from the shelf. */
    public void remove(String name) {
        try {
            Files.delete(existing(name));
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("stock-shelf.the-stock-cannot-be-removed", name),
                    TEXTS.text("stock-shelf.check-that-you-may-write", folder),
                    e);
        }
    }

    private Path existing(String name) {
        Path file = file(name);
        if (!Files.exists(file)) {
            List<String> names = all().stream().map(Stock::name).toList();
            throw new UserFacingException(
                    TEXTS.text("stock-shelf.there-is-no-stock-called", name),
                    names.isEmpty()
                            ? TEXTS.text("stock-shelf.put-some-on-the-shelf")
                            : TEXTS.text("stock-shelf.name-one-of-these", String.join(", ", names)));
        }
        return file;
    }

    private Path file(String name) {
        String plain = name.strip().toLowerCase(Locale.ROOT);
        String safe = plain.replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        boolean whole = safe.equals(plain);
        return folder.resolve((whole ? safe : safe + "-" + Integer.toHexString(plain.hashCode())) + ENDING);
    }

    private void write(Path file, StockJson document) {
        AtomicFile.of(file, KIND).withFolder().write(out -> out.write(JobFile.JSON.writeValueAsBytes(document)));
    }

    private static StockJson read(Path file) {
        byte[] json = InputFile.read(file, GREATEST_BYTES, "stock" + ENDING);
        StockJson document;
        try {
            document = StockJson.read(json);
        } catch (IOException e) {
            throw notStock(file, e);
        }
        if (document == null || !document.isReadable()) { // null: the JSON "null"
            throw notStock(file, null);
        }
        try {
            document.item();
        } catch (IllegalArgumentException | NullPointerException | IndexOutOfBoundsException e) {
            throw notStock(file, e);
        }
        return document;
    }

    /**
     * Reads an outline with flaws from a file of the maker's own.
     *
     * @param file JSON with {@code outline}, a list of pairs in mm, and {@code flaws} and {@code poorer}, lists of such
     *     lists, which may be missing; or a drawing ({@link OutlineSvg})
     */
    public static Stock outline(Path file, String name, OptionalDouble thicknessMm) {
        byte[] bytes = InputFile.read(file, GREATEST_BYTES, "hide" + ENDING);
        boolean drawing = file.toString().toLowerCase(Locale.ROOT).endsWith(".svg");
        try {
            return drawing
                    ? OutlineSvg.read(bytes, name, thicknessMm)
                    : StockJson.State.read(bytes).stock(name, thicknessMm);
        } catch (IOException | IllegalArgumentException | NullPointerException | IndexOutOfBoundsException e) {
            throw drawing ? notDrawing(file, e) : notStock(file, e);
        }
    }

    private static UserFacingException notDrawing(Path file, Exception cause) {
        return new UserFacingException(
                TEXTS.text("stock-shelf.is-no-drawing-of-stock", file),
                TEXTS.text("stock-shelf.give-an-svg-whose-page"),
                cause);
    }

    private static UserFacingException notStock(Path file, @Nullable Exception cause) {
        return new UserFacingException(
                TEXTS.text("stock-shelf.is-no-outline-of-stock", file),
                TEXTS.text("stock-shelf.give-json-with-outline-x"),
                cause);
    }
}
